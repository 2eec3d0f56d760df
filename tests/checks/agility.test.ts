import { expect, test } from "vitest";
import { type AgilityAttempt, agility } from "../../electron/domain/tests/agility/protocol.ts";
import { inUnit } from "../../electron/domain/units.ts";

function trial(direction: "cw" | "ccw", landings: number, touches: number): AgilityAttempt {
  return agility.attempt.parse({ direction, laps: Math.floor(landings / 4), extra: landings % 4, touches });
}

function landingsOf(...trials: AgilityAttempt[]): number {
  const mark = agility.score(agility.defaults, trials);
  return mark.state === "complete" ? inUnit(agility.grain, mark.value) : Number.NaN;
}

// Common practice, no source: 7 laps and 3 quadrants are 31; 31 with two touches and 29 with none → 29.5.
test("the worked example of the rule", () => {
  const clockwise = { direction: "cw", laps: 7, extra: 3, touches: 2 } as const;
  expect(landingsOf(clockwise, { direction: "ccw", laps: 7, extra: 1, touches: 0 })).toBe(29.5);
});

// Arithmetic from the stated rule (Johnson & Nelson 1979 for the half landing a touch costs, from memory).
test.each([
  [28, 3, 26, 1, 26.0],
  [25, 0, 24, 1, 24.25],
  // A trial never falls below zero (our decision: the bare arithmetic would give −0.5).
  [2, 6, 0, 0, 0],
])("%i landings with %i touches and %i with %i → %f", (cw, cwTouches, ccw, ccwTouches, landings) => {
  expect(landingsOf(trial("cw", cw, cwTouches), trial("ccw", ccw, ccwTouches))).toBe(landings);
});

test("the floor is taken per direction, before the mean", () => {
  expect(landingsOf(trial("cw", 2, 6), trial("ccw", 20, 0))).toBe(10);
});

// Common practice, no source: both directions are needed for a mark.
test("one direction alone is incomplete and says which one is missing", () => {
  const score = (direction: "cw" | "ccw") => agility.score(agility.defaults, [trial(direction, 20, 0)]);
  expect(score("cw")).toEqual({ state: "incomplete", missing: ["ccw"] });
  expect(score("ccw")).toEqual({ state: "incomplete", missing: ["cw"] });
});

// A 3 ft cross: 3 × 304.8 mm (international yard and pound agreement, 1959) = 914.4 mm.
test("the default cross is three feet, the trial ten seconds", () => {
  expect(agility.defaults).toEqual({ crossSize: Math.round(3 * 304.8), seconds: 10, touchPenalty: 0.5 });
});
