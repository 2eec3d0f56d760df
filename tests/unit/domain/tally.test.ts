import fc from "fast-check";
import { expect, test } from "vitest";
import type { Runner } from "../../../electron/domain/queue/queue.ts";
import { isFinished, tally } from "../../../electron/domain/queue/tally.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";

function runner(
  athleteId: number,
  done: readonly TestCode[],
  leftOut: readonly TestCode[],
  doneAt = "",
): Runner {
  const lastDone = new Map(done.map((code) => [code, doneAt] as const));
  const checkedIn = "2026-11-14T09:00:00.000Z";
  return { athleteId, bib: athleteId, checkedIn, done: new Set(done), leftOut: new Set(leftOut), lastDone };
}

test("one test's tally, worked by hand", () => {
  const runners = [
    runner(1, ["push-up", "agility"], []),
    runner(2, ["push-up"], []),
    runner(3, [], []),
    runner(4, [], ["push-up", "agility"]),
    runner(5, ["push-up"], ["agility"]),
  ];
  expect(tally("agility", runners, new Set([2, 1]))).toEqual({
    test: "agility",
    done: 1,
    waiting: 1,
    later: 1,
    leftOut: 2,
    incomplete: 1,
  });
  expect(tally("vertical", runners, new Set())).toMatchObject({ done: 0, waiting: 3, later: 2, leftOut: 0 });
});

const some = fc.subarray([...testCodes]);

test("everybody is in exactly one place of each test, and waits for at most one", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(some, some), { maxLength: 8 }), (people) => {
      const runners = people.map(([done, leftOut], index) => runner(index, done, leftOut));
      const tallies = testCodes.map((code) => tally(code, runners, new Set()));
      for (const { done, waiting, later, leftOut } of tallies) {
        expect(done + waiting + later + leftOut).toBe(runners.length);
      }
      const waiting = tallies.reduce((sum, each) => sum + each.waiting, 0);
      expect(waiting).toBe(runners.filter((each) => !isFinished(each)).length);
    }),
  );
});
