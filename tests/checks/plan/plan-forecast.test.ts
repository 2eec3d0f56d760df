import { expect, test } from "vitest";
import { beginning } from "../../../electron/domain/plan/floor.ts";
import { forecastOf } from "../../../electron/domain/plan/forecast.ts";
import type { Moment } from "../../../electron/domain/plan/hall.ts";
import { planDay } from "../../../electron/domain/plan/plan-day.ts";
import { finished } from "../../../electron/domain/plan/progress.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { calibrationOf, forecasted, parts } from "./calibration.ts";
import { arriving, athletesOf, hallOf, still, usualHall } from "./halls.ts";

const seed = [20, 26, 11, 30] as const;

/** The short form of `npm run bench -- forecast`: 40 halls, so that a share of 80 in 100 may be seen as 67 to 93. */
test("the span that says 8 of 10 holds the true end of halls simulated apart from it, and the middle is near", () => {
  const all = forecasted("short", 40, 100);
  const whole = calibrationOf(all);
  expect(whole.held).toBeGreaterThan(0.75);
  expect(whole.held).toBeLessThan(0.92);
  for (const part of parts) {
    const line = calibrationOf(all.filter((each) => each.part === part));
    expect(line.held).toBeGreaterThan(0.67);
    expect(Math.abs(line.error)).toBeLessThan(part < 0.3 ? 8 : 5);
  }
  // The pace of the last half hour is off by three times as much.
  expect(whole.absolute).toBeLessThan(whole.atPace.absolute / 2);
});

test("the same moment and seed give the same forecast, whose span is in order", () => {
  const moment = beginning(usualHall(), arriving(20));
  const forecast = finished(forecastOf(moment, [], seed, 60));
  expect(finished(forecastOf(moment, [], seed, 60))).toEqual(forecast);
  expect(forecast.end.from).toBeLessThan(forecast.end.middle);
  expect(forecast.end.middle).toBeLessThan(forecast.end.until);
});

/** A moment at which one station has a long queue and all others are quick. */
function queueAt(code: TestCode, judges: number | null = null): Moment {
  const stations = testCodes.map((test_) => still(test_, test_ === code ? 300 : 20));
  const rested = { arrives: { from: -9000, until: -9000 } };
  return beginning(hallOf(stations, { judges }), athletesOf(30, [code, "endurance"], rested));
}

test("a long queue holds the day up, and one more place there is suggested", () => {
  const forecast = finished(forecastOf(queueAt("vertical"), [], seed, 100));
  expect(forecast.holdsUp).toBe("vertical");
  expect(forecast.suggestion?.changes).toEqual([{ kind: "place", test: "vertical" }]);
  // Thirty turns of five minutes at two places.
  expect(forecast.suggestion?.saved.middle).toBeGreaterThan(0.4 * 30 * 300);
  expect(forecast.suggestion?.saved.middle).toBeLessThan(0.6 * 30 * 300);
});

test("no place is suggested that nobody could judge", () => {
  const forecast = finished(forecastOf(queueAt("vertical", 1), [], seed, 100));
  expect(forecast.suggestion?.changes).not.toEqual([{ kind: "place", test: "vertical" }]);
});

test("where nothing helps, nothing is suggested and nothing holds the day up", () => {
  const moment = beginning(usualHall(), athletesOf(1));
  const { suggestion, holdsUp } = finished(forecastOf(moment, [], seed, 60));
  expect({ suggestion, holdsUp }).toEqual({ suggestion: null, holdsUp: null });
});

test("nobody left: the end is now", () => {
  expect(finished(forecastOf(beginning(usualHall(), []), [], seed, 20)).end).toEqual({
    from: 0,
    middle: 0,
    until: 0,
  });
});

test("who is told to come an hour before the first test is not missing then, and is waited for at its beginning", () => {
  const come = (from: number) => athletesOf(40, testCodes, { arrives: { from, until: from }, comes: 0.5 });
  const [early, then] = [-3600, 0].map((from) => finished(planDay(usualHall(), come(from), [], seed, 60)));
  expect(early?.end).toEqual(then?.end);
  expect(early?.waves.map(({ at, athletes }) => [at, athletes.length])).toEqual([[-3600, 40]]);
  expect(new Set(early?.turns.map(({ athlete }) => athlete)).size).toBeGreaterThan(10);
});

test("a plan tells one whole day, loads that never exceed what there is, and waves as the roster has them", () => {
  const [hall, athletes] = [usualHall(), arriving(30)];
  const plan = finished(planDay(hall, athletes, [], seed, 60));
  const last = Math.max(...plan.turns.map(({ until }) => until));
  expect(Math.abs(last - plan.end.middle)).toBeLessThan(0.05 * plan.end.middle);
  for (const { used } of plan.stations) {
    expect(Math.max(...used)).toBeLessThanOrEqual(1 + 1e-9);
    expect(Math.min(...used)).toBeGreaterThanOrEqual(0);
  }
  expect(new Set(plan.stations.map(({ used }) => used.length)).size).toBe(1);
  expect(plan.waves.map(({ athletes: some, at }) => [some.length, at])).toEqual([[30, 0]]);
  expect(plan.waits.longest).toBeGreaterThanOrEqual(plan.waits.mean);
});
