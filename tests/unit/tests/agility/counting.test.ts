import { expect, test } from "vitest";
import {
  type Counting,
  countingOf,
  countOf,
  goBack,
  goOn,
  stepBy,
  typeDigit,
} from "../../../../renderer/tests/agility/counting.ts";

const whistle = {
  direction: "cw",
  fromMs: 0,
  untilMs: 10_000,
  stage: "to-count",
  landings: 0,
  touches: 0,
  laps: 0,
  extra: 0,
} as const;

function typed(start: Counting, ...digits: readonly number[]): Counting {
  return digits.reduce(typeDigit, start);
}

test("three digits are laps, extra quadrants and touches", () => {
  const counting = typed(countingOf(whistle), 7, 3, 2);
  expect(countOf(counting)).toEqual({ laps: 7, extra: 3, touches: 2 });
});

test("a fourth quadrant is not taken, and nothing else is lost", () => {
  const counting = typed(countingOf(whistle), 7, 4);
  expect(counting).toMatchObject({ laps: 7, extra: null, at: "extra", tooMany: true });
  expect(countOf(typed(counting, 0, 0))).toEqual({ laps: 7, extra: 0, touches: 0 });
});

test("what was tapped while the clock ran stands already, and only the touches are asked", () => {
  const counting = countingOf({ ...whistle, landings: 31, laps: 7, extra: 3, touches: 2 });
  expect(counting).toMatchObject({ laps: 7, extra: 3, touches: 2, at: "touches" });
});

test("a digit that was wrong is gone back to and typed anew", () => {
  const counting = typed(goBack(typed(countingOf(whistle), 6, 3)), 2, 1);
  expect(countOf(counting)).toEqual({ laps: 6, extra: 2, touches: 1 });
});

test("ten laps and more are stepped to, and steps end at none and at three quadrants", () => {
  const nine = stepBy(typed(countingOf(whistle), 9), "laps", 1);
  expect(countOf(typed(goOn(nine), 1, 0))).toEqual({ laps: 10, extra: 1, touches: 0 });
  expect(stepBy(countingOf(whistle), "touches", -1).touches).toBe(0);
  expect(stepBy({ ...nine, extra: 3 }, "extra", 1).extra).toBe(3);
});

test("what was passed by is none, and a count with an open question is no count", () => {
  expect(countOf(typed(countingOf(whistle), 7, 3))).toBeNull();
  expect(countOf(goOn(goOn(typed(countingOf(whistle), 7))))).toEqual({ laps: 7, extra: 0, touches: 0 });
});
