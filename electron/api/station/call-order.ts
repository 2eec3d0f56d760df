import type { PlanSettings } from "../../domain/plan/settings.ts";
import {
  aheadAfter,
  callOrder,
  lostBy,
  type Passing,
  passesAt,
  type StationPace,
} from "../../domain/queue/passing.ts";
import type { QueuePlace } from "../../domain/queue/queue.ts";
import { ofEachTest, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { cachedUntilWrite } from "../../store/connection/until-write.ts";
import { calls } from "../../store/tables/calls.ts";
import { planOfDay } from "../../store/tables/day-plans.ts";
import type { Day } from "../../store/tables/days.ts";
import { type PlannedStation, stationsOf } from "../plan/hall.ts";
import { runnersOf } from "./runners.ts";

/** Where athletes are to be called to, and when (ISO 8601). */
interface Calling {
  readonly test: TestCode;
  readonly now: string;
  /** How many of those who are not called yet; as many as start together at one place, if left out. */
  readonly count?: number;
}

/**
 * Returns a queue in the order in which to call its athletes: as they came, or, where the day's plan lets others lose some
 * minutes by it, whoever has most ahead before them. Those who are called already stay on top, those who rest stay behind.
 */
export function inCallOrder(
  db: ReadableDb,
  day: Day,
  queue: readonly QueuePlace[],
  { test, now, count }: Calling,
): readonly QueuePlace[] {
  const { settings } = planned(db, day.id);
  if (settings === null || settings.boundMinutes === 0) return queue;
  const bound = settings.boundMinutes * 60;
  const called = queue.filter(({ calledAt }) => calledAt !== null);
  const rested = queue.filter(({ calledAt, readyAt }) => calledAt === null && readyAt <= now);
  const resting = queue.filter(({ calledAt, readyAt }) => calledAt === null && readyAt > now);
  const stations = stationsOf(settings, []);
  const lanes = stations.find((station) => station.test === test)?.lanes ?? 1;
  const passing = passingAt(db, day, { test, now, stations });
  return [...called, ...callOrder(rested, count ?? lanes, { ...passing, bound }), ...resting];
}

/**
 * Returns how many of a queue are rested at the instant `now` (ISO 8601), where the order of the calls follows that, and 0
 * where it does not: the order is another when this is, and whatever is written.
 */
export function restedInOrder(db: ReadableDb, day: Day, queue: readonly QueuePlace[], now: string): number {
  if ((planned(db, day.id).settings?.boundMinutes ?? 0) === 0) return 0;
  return queue.filter(({ readyAt }) => readyAt <= now).length;
}

/** What is planned, read once between two changes: a dozen devices ask for their lines at each. */
const planned = cachedUntilWrite((db: ReadableDb, dayId: number): { settings: PlanSettings | null } => ({
  settings: planOfDay(db, dayId)?.settings ?? null,
}));

/** Reads what everybody has lost so far and has ahead, by the station's typed or assumed times. */
function passingAt(
  db: ReadableDb,
  day: Day,
  { test, now, stations }: Pick<Calling, "test" | "now"> & { readonly stations: readonly PlannedStation[] },
): Omit<Passing, "bound"> {
  const runners = runnersOf(db, day, now);
  const paces = ofEachTest((code) => paceOf(stations, code));
  const cycles = ofEachTest((code) => paces[code].cycle);
  const all = calls(db, day.id);
  const passes = ofEachTest((code) => {
    const here = all.filter((call) => call.test === code);
    const called = new Map(here.map(({ athleteId, at }) => [athleteId, at]));
    return passesAt(code, runners, called, day.restMinutes);
  });
  const elsewhere = testCodes.filter((code) => code !== test);
  const lostOf = (id: number) =>
    elsewhere.reduce((sum, code) => sum + lostBy(passes[code].get(id) ?? 0, paces[code]), 0);
  const aheadOf = (runner: (typeof runners)[number]) =>
    aheadAfter(test, runner, cycles, day.restMinutes * 60);
  return {
    ...{ pace: paces[test], passes: passes[test] },
    lostElsewhere: new Map(runners.map(({ athleteId }) => [athleteId, lostOf(athleteId)])),
    ahead: new Map(runners.map((runner) => [runner.athleteId, aheadOf(runner)])),
  };
}

function paceOf(stations: readonly PlannedStation[], test: TestCode): StationPace {
  const station = stations.find((each) => each.test === test);
  if (station === undefined) return { cycle: 0, together: 1 };
  const { turn, changeOver, places, lanes } = station;
  return { cycle: turn.median + changeOver.median, together: places * lanes };
}
