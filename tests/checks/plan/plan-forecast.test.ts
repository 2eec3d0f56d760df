import { expect, test } from "vitest";
import { assumedTimes } from "../../../electron/domain/plan/assumed.ts";
import { beginning } from "../../../electron/domain/plan/floor.ts";
import { forecastOf } from "../../../electron/domain/plan/forecast.ts";
import type { Athlete, Hall, Moment } from "../../../electron/domain/plan/hall.ts";
import { planDay } from "../../../electron/domain/plan/plan-day.ts";
import { finished } from "../../../electron/domain/plan/progress.ts";
import { whatIfs } from "../../../electron/domain/plan/what-ifs.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { ordinaryMs } from "../../ordinary.ts";
import { calibrationOf, forecasted, parts } from "./calibration.ts";
import { athletesOf, hallOf, still } from "./halls.ts";

const seed = [20, 26, 11, 30] as const;

/** A hall of the assumed times, with so many athletes who arrive within an hour. */
function usualHall(): Hall {
  const lanes: Record<TestCode, number> = { "push-up": 4, agility: 1, vertical: 1, core: 6, endurance: 6 };
  return hallOf(
    testCodes.map((code) => ({ ...still(code, 0, { lanes: lanes[code] }), ...assumedTimes[code] })),
    { rest: 300 },
  );
}

function arriving(count: number): Athlete[] {
  return athletesOf(count, testCodes, { arrives: { from: 0, until: 3600 }, comes: 0.9 });
}

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

test("120 athletes: a forecast of 200 days in 300 ms, all changes and pairs in 5 s, on an ordinary machine", async () => {
  const [hall, athletes] = [usualHall(), arriving(120)];
  const moment = beginning(hall, athletes);
  // Once to make the engine's code fast.
  finished(forecastOf(moment, [], seed, 50));
  expect(await ordinaryMs(() => finished(forecastOf(moment, [], seed)))).toBeLessThan(300);
  expect(await ordinaryMs(() => finished(whatIfs(hall, athletes, { known: [], seed })))).toBeLessThan(5000);
});
