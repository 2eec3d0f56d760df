import { expect, test } from "vitest";
import { endurance } from "../../../../electron/domain/tests/endurance/protocol.ts";
import {
  exerciseAt,
  mostReps,
  repsBefore,
  withinRound,
  writeSplit,
} from "../../../../renderer/tests/endurance/howFar.ts";

const parameters = endurance.defaults;

test("where somebody stopped is an exercise and its reps, in the order of the round", () => {
  expect(repsBefore(parameters)).toEqual([0, 20, 40, 80]);
  expect([0, 19, 20, 39, 40, 79, 80, 89].map((reps) => exerciseAt(parameters, reps))).toEqual([
    0, 0, 1, 1, 2, 2, 3, 3,
  ]);
});

test("a whole round is no stop within it", () => {
  expect(mostReps(parameters)).toBe(89);
  expect([-1, 45, 90].map((reps) => withinRound(parameters, reps))).toEqual([0, 45, 89]);
});

test("hundredths of a hand-timed split go up to the next tenth", () => {
  // World Athletics Technical Rules, hand timing: 10.11 s is recorded as 10.2 s.
  expect(writeSplit(parameters, 10_110)).toBe("0:10.2");
  expect(writeSplit(parameters, 372_400)).toBe("6:12.4");
  expect(writeSplit(parameters, 372_401)).toBe("6:12.5");
});
