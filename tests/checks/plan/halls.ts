import { assumedTimes } from "../../../electron/domain/plan/assumed.ts";
import { plainDraws } from "../../../electron/domain/plan/draws.ts";
import { beginning, floorOf } from "../../../electron/domain/plan/floor.ts";
import type { Athlete, Hall, Station } from "../../../electron/domain/plan/hall.ts";
import { simulate } from "../../../electron/domain/plan/simulate.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";

/** A station at which everything takes its median, and nothing unless it is said. Seconds. */
export function still(test: TestCode, turn: number, more: Partial<Station> = {}): Station {
  const none = { median: 0, sigma: 0 };
  return { test, places: 1, lanes: 1, turn: { median: turn, sigma: 0 }, changeOver: none, ...more };
}

/** A hall of such stations, in the held order. */
export function hallOf(stations: readonly Station[], more: Partial<Hall> = {}): Hall {
  return { stations, judges: null, rest: 0, breaks: [], middleIsFree: false, ...more };
}

/** Athletes who are all there at the beginning and do the tests that are named, or all. */
export function athletesOf(
  count: number,
  left: readonly TestCode[] = testCodes,
  more: Partial<Athlete> = {},
): Athlete[] {
  const arrives = { from: 0, until: 0 };
  return Array.from({ length: count }, (_none, id) => ({
    ...{ id, league: "Ours", arrives, comes: 1, left, rested: 0 },
    ...more,
  }));
}

/** Simulates a day without chance. */
export function plainDay(hall: Hall, athletes: readonly Athlete[]) {
  return simulate(floorOf(beginning(hall, athletes)), plainDraws(athletes.length, hall.stations.length));
}

/** A hall of the assumed times. */
export function usualHall(): Hall {
  const lanes: Record<TestCode, number> = { "push-up": 4, agility: 1, vertical: 1, core: 6, endurance: 6 };
  return hallOf(
    testCodes.map((code) => ({ ...still(code, 0, { lanes: lanes[code] }), ...assumedTimes[code] })),
    { rest: 300 },
  );
}

/** Returns so many athletes who arrive within an hour, nine of ten of whom come. */
export function arriving(count: number): Athlete[] {
  return athletesOf(count, testCodes, { arrives: { from: 0, until: 3600 }, comes: 0.9 });
}
