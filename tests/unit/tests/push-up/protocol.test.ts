import fc from "fast-check";
import { expect, test } from "vitest";
import { pushUp } from "../../../../electron/domain/tests/push-up/protocol.ts";
import { cadences } from "./examples.ts";

/** The rule told as a volunteer would live it: count beat by beat, remember the last good one, stop at the misses. */
function markByHand(missesToStop: number, seen: string): number {
  let mark = 0;
  let misses = 0;
  for (const [index, sign] of [...seen].entries()) {
    if (sign === ".") {
      mark = index + 1;
      misses = 0;
    } else {
      misses += 1;
    }
    if (misses === missesToStop) break;
  }
  return mark;
}

function markOf(missesToStop: number, seen: string): number {
  const mark = pushUp.score({ ...pushUp.defaults, missesToStop }, [{ how: "cadences", cadences: seen }]);
  return mark.state === "complete" ? mark.value : Number.NaN;
}

test("every run of up to ten cadences is scored as by hand", () => {
  for (let length = 0; length <= 10; length += 1) {
    for (let bits = 0; bits < 2 ** length; bits += 1) {
      const seen = Array.from({ length }, (_none, index) => ((bits >> index) & 1 ? "x" : ".")).join("");
      for (const misses of [1, 2, 3]) expect(markOf(misses, seen)).toBe(markByHand(misses, seen));
    }
  }
});

test("long runs are scored as by hand", () => {
  fc.assert(
    fc.property(cadences, fc.integer({ min: 1, max: 3 }), (seen, misses) => {
      expect(markOf(misses, seen)).toBe(markByHand(misses, seen));
    }),
  );
});

test("what is marked after the end changes nothing and is refused", () => {
  fc.assert(
    fc.property(cadences, cadences, (before, after) => {
      expect(markOf(3, `${before}xxx${after}`)).toBe(markOf(3, before));
    }),
  );
  const judge = (seen: string) => pushUp.plausibility(pushUp.defaults, { how: "cadences", cadences: seen });
  expect(judge("....xxx").level).toBe("fine");
  expect(judge("....xxx.")).toEqual({
    level: "refuse",
    sentence: { key: "test.push-up.plausibility.afterTheEnd", values: { count: 3 } },
  });
});

test("a tally cannot be off more often than the test allows", () => {
  const parameters = { ...pushUp.defaults, missesToStop: 2 };
  const judge = (offAtEnd: number) =>
    pushUp.plausibility(parameters, { how: "tally", reps: 20, offAtEnd }).level;
  expect([judge(2), judge(3)]).toEqual(["fine", "refuse"]);
});

test.each([
  { how: "cadences", cadences: "..o" },
  { how: "cadences", cadences: ".".repeat(401) },
  { how: "tally", reps: 2, offAtEnd: 3 },
  { how: "tally", reps: 20, offAtEnd: 4 },
  { how: "tally", reps: 20.5, offAtEnd: 0 },
  { how: "tally", reps: -1, offAtEnd: 0 },
  { how: "guess", reps: 20 },
])("no push-up attempt: %j", (attempt) => {
  expect(pushUp.attempt.safeParse(attempt).success).toBe(false);
});
