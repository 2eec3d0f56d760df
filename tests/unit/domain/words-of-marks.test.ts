import fc from "fast-check";
import { expect, test } from "vitest";
import { core, stageAt } from "../../../electron/domain/tests/core/protocol.ts";
import {
  parseAttempt,
  parseParameters,
  protocolOf,
  refusalOf,
  testCodes,
} from "../../../electron/domain/tests/registry.ts";
import { againstLast, writeMark } from "../../../electron/domain/tests/written.ts";
import { examplesOf } from "../tests/every-test.ts";
import { textOf } from "./text.ts";

test.each(testCodes)("%s: every doubt has words; what is asked is a question", (code) => {
  const { plausibility, defaults } = protocolOf(code);
  fc.assert(
    fc.property(examplesOf[code].attempts, (attempt) => {
      const opinion = plausibility(defaults, attempt);
      if (opinion.level === "ask") expect(textOf(opinion.sentence)).toMatch(/\?$/);
      if (opinion.level === "refuse")
        expect(textOf(opinion.sentence)).toMatch(/check|enter|is this the reach/i);
    }),
    { numRuns: 500 },
  );
});

test("every stage of two rounds has words, and the later round says so", () => {
  for (let seconds = 0; seconds < 480; seconds += 1) {
    const text = textOf(stageAt(core.defaults, seconds).sentence);
    expect(text.startsWith("round 2, ")).toBe(seconds >= 240);
  }
});

test("a mark of every state is written for people", () => {
  expect(writeMark("agility", { state: "complete", value: 118 }, "cm")).toEqual({
    number: "29.5",
    unit: "landings",
  });
  expect(writeMark("vertical", { state: "complete", value: 8700 }, "cm")).toEqual({
    number: "43.5",
    unit: "cm",
  });
  expect(writeMark("vertical", { state: "complete", value: 71 * 127 }, "in")).toEqual({
    number: "17.75",
    unit: "in",
  });
  expect(writeMark("endurance", { state: "complete", value: 372_400 }, "cm")).toEqual({
    number: "6:12.4",
    unit: "min:s",
  });
  const noteOf = (...of: Parameters<typeof writeMark>) => {
    const { number, note } = writeMark(...of);
    return note === undefined ? number : number + textOf(note);
  };
  expect(noteOf("endurance", { state: "unfinished", rounds: 2, reps: 1 }, "cm")).toBe(
    "not finished: full rounds 2, reps 1",
  );
  for (const missing of [["cw"], ["ccw"], ["cw", "ccw"]]) {
    expect(noteOf("agility", { state: "incomplete", missing }, "cm")).toMatch(/still to come$/);
  }
});

test("a mark far from the last one is asked about in the reader's own unit", () => {
  expect(againstLast("vertical", 8600, 8700, "cm")).toEqual({ level: "fine" });
  const opinion = againstLast("vertical", 40 * 127, 80 * 127, "in");
  expect(opinion.level === "ask" && textOf(opinion.sentence)).toBe(
    "The last result was 10 and this one is 20. Is it the right person, and is the number right?",
  );
});

test("a refused shape is told by its own rule, else by its field", () => {
  const refusal = (code: "push-up" | "core", attempt: unknown) => {
    const { error } = parseAttempt(code, attempt);
    return error === undefined ? "" : textOf(refusalOf(error));
  };
  expect(refusal("push-up", { how: "tally", reps: 2, offAtEnd: 3 })).toMatch(
    /^More reps are missed at the end/,
  );
  expect(refusal("core", { held: 0.5 })).toContain("the field held");
  expect(refusal("core", "hello")).toMatch(/^Something is missing/);
  const odd = parseParameters("endurance", {
    rounds: 1,
    exercises: [{ exercise: "high-knees", count: 3, sides: 2 }],
  });
  expect(odd.error && textOf(refusalOf(odd.error))).toContain("even count");
});

test("no input whatever makes a parser throw", () => {
  fc.assert(
    fc.property(fc.constantFrom(...testCodes), fc.anything(), (code, anything) => {
      expect(typeof parseAttempt(code, anything).success).toBe("boolean");
      expect(parseParameters(code, anything).success).toBe(false);
    }),
  );
});
