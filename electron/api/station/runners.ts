import { isDone, type QueuePlace, queueFor, type Runner } from "../../domain/queue/queue.ts";
import { lastDoneByAthlete, lastTimedByAthlete } from "../../domain/queue/times.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { cachedUntilWrite } from "../../store/connection/until-write.ts";
import { everybody } from "../../store/reads/present.ts";
import { absences } from "../../store/tables/absences.ts";
import { attemptTimes } from "../../store/tables/attempts.ts";
import { calls } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import { leftOut } from "../../store/tables/entrants.ts";
import { marksOfDay } from "../../store/tables/marks.ts";
import { timesBy } from "./times.ts";

/** Who tests on a day, and the queues asked for so far, as they are until something changes. */
interface Floor {
  readonly runners: readonly Runner[];
  /** No time in them is later (ISO 8601), so that they are the same at every instant from then on. */
  readonly from: string;
  readonly queues: Map<TestCode, readonly QueuePlace[]>;
}

/** The floor of a day between two changes: a dozen devices ask for it at each. */
const floorOf: (db: ReadableDb, dayId: number) => { known?: Floor } = cachedUntilWrite(() => ({}));

/** Returns everybody who tests today, with the facts that decide their place in queues. `now`: ISO 8601. */
export function runnersOf(db: ReadableDb, day: Day, now: string): readonly Runner[] {
  const floor = floorOf(db, day.id);
  if (floor.known !== undefined && floor.known.from <= now) return floor.known.runners;
  const runners = readRunners(db, day, now);
  const from = latestOf(db, day);
  // A time ahead of the clock counts otherwise as the clock goes on.
  if (from <= now) floor.known = { runners, from, queues: new Map() };
  return runners;
}

/** True if the floor is the same at the instant `now` and at every later one, until something in the store changes. */
export function isFloorSettled(db: ReadableDb, day: Day, now: string): boolean {
  const runners = runnersOf(db, day, now);
  return floorOf(db, day.id).known?.runners === runners;
}

function latestOf(db: ReadableDb, day: Day): string {
  const times = [
    ...everybody(db, day.id).map(({ since }) => since),
    ...attemptTimes(db, day.id).map(({ at }) => at),
  ];
  return times.reduce((latest, time) => (time > latest ? time : latest), "");
}

function readRunners(db: ReadableDb, day: Day, now: string): Runner[] {
  const times = timesBy(db, day.id, now);
  const lastDone = lastDoneByAthlete(times);
  const lastTimed = lastTimedByAthlete(times);
  const marks = Map.groupBy(marksOfDay(db, day.id), ({ athleteId }) => athleteId);
  const left = Map.groupBy(leftOut(db, day.id), ({ athleteId }) => athleteId);
  const absent = Map.groupBy(absences(db, day.id), ({ athleteId }) => athleteId);
  return everybody(db, day.id).flatMap(({ athleteId, bib, state, since }) => {
    if (state !== "testing" || bib === null) return [];
    const done = (marks.get(athleteId) ?? []).filter(({ mark }) => isDone(mark)).map(({ test }) => test);
    return {
      athleteId,
      bib,
      // Ahead of the clock if that was set back since: nobody waits until it gets there again.
      checkedIn: since < now ? since : now,
      done: new Set(done),
      leftOut: new Set((left.get(athleteId) ?? []).map(({ test }) => test)),
      lastDone: lastDone.get(athleteId) ?? new Map(),
      lastTimed: lastTimed.get(athleteId) ?? new Map(),
      absent: new Map((absent.get(athleteId) ?? []).map(({ test, at }) => [test, at])),
    };
  });
}

/** Returns the queue of one test at the instant `now` (ISO 8601). */
export function queueOf(db: ReadableDb, day: Day, test: TestCode, now: string): readonly QueuePlace[] {
  const runners = runnersOf(db, day, now);
  const { known } = floorOf(db, day.id);
  const there = known?.queues.get(test);
  if (known?.runners === runners && there !== undefined) return there;
  const called = calls(db, day.id).filter((call) => call.test === test);
  const times = new Map(called.map(({ athleteId, at }) => [athleteId, at]));
  const queue = queueFor(test, runners, times, day.restMinutes);
  if (known?.runners === runners) known.queues.set(test, queue);
  return queue;
}
