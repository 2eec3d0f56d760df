import { setImmediate } from "node:timers/promises";
import type { Known, PastDay } from "../../domain/plan/hall.ts";
import { knownFrom } from "../../domain/plan/known.ts";
import { usualSettings } from "../../domain/plan/settings.ts";
import { firstRow, type ReadableDb } from "../../store/connection/database.ts";
import type { Store } from "../../store/connection/store.ts";
import { everybody } from "../../store/reads/present.ts";
import { planOfDay } from "../../store/tables/day-plans.ts";
import { allDays, type Day } from "../../store/tables/days.ts";
import { doneTurns, secondsFrom } from "./done.ts";
import { assumedHall } from "./hall.ts";

/** Newest closed days that stations' times are learnt from: halls and crews change (ours, no source). */
const mostDays = 6;
/** Fewest turns that a median is told of: with fewer an assumption says as much (ours, no source). */
const leastTurns = 5;

/** What was learnt of the days before one, and by what it would change. */
interface Learnt {
  readonly stamp: string;
  /** By day; those that are missing have not been read yet. */
  readonly days: Map<number, PastDay>;
  known: readonly Known[] | null;
}

const learntOf = new WeakMap<ReadableDb, Learnt>();

/**
 * Returns what earlier days of this store tell of the stations' times; a station of which too few turns are known is not
 * in it. Read again only when a day before may have changed: an entry of today must not wait for it.
 */
export function knownOf(db: ReadableDb, day: Day): readonly Known[] {
  const learnt = learntNow(db, day);
  if (learnt.known === null) {
    const days = daysBefore(db, day).map((each) => readInto(learnt, db, each));
    learnt.known = knownFrom(days).filter(({ turns }) => turns >= leastTurns);
  }
  return learnt.known;
}

/** Reads what {@link knownOf} needs, one day at a time, and lets entries go between two of them. */
export async function learnBetweenEntries(store: Store, day: Day): Promise<void> {
  const learnt = learntNow(store.db, day);
  for (const each of learnt.known === null ? daysBefore(store.db, day) : []) {
    readInto(learnt, store.db, each);
    await setImmediate();
  }
}

function learntNow(db: ReadableDb, day: Day): Learnt {
  const stamp = `${day.id} ${stampOf(db)}`;
  const there = learntOf.get(db);
  if (there?.stamp === stamp) return there;
  const fresh: Learnt = { stamp, days: new Map(), known: null };
  learntOf.set(db, fresh);
  return fresh;
}

function daysBefore(db: ReadableDb, day: Day): Day[] {
  return allDays(db)
    .filter(({ id, state }) => state === "closed" && id !== day.id)
    .slice(0, mostDays);
}

function readInto({ days }: Learnt, db: ReadableDb, day: Day): PastDay {
  const read = days.get(day.id) ?? pastDayOf(db, day);
  days.set(day.id, read);
  return read;
}

/** Days are opened and closed, people are deleted and made one, and nothing else touches a day that is closed. */
function stampOf(db: ReadableDb): string {
  const sql = `SELECT (SELECT count(*) FROM day_event) || ' ' || (SELECT count(*) FROM erasure) || ' ' ||
    (SELECT coalesce(max(seq), 0) FROM step) || ' ' || (SELECT count(*) FROM step WHERE undone_at IS NOT NULL) AS stamp`;
  return firstRow<{ stamp: string }>(db, sql)?.stamp ?? "";
}

/** Later than any attempt: the clock of a day that is over is not doubted. */
const everything = "9999-12-31T23:59:59.999Z";

function pastDayOf(db: ReadableDb, day: Day): PastDay {
  const here = everybody(db, day.id).filter(({ state }) => state === "testing");
  const zero = here.map(({ since }) => since).sort()[0] ?? `${day.date}T00:00:00.000Z`;
  const zeroMs = Date.parse(zero);
  return {
    hall: assumedHall(planOfDay(db, day.id)?.settings ?? usualSettings(), day),
    done: doneTurns(db, day.id, zero, everything),
    arrived: new Map(here.map(({ athleteId, since }) => [athleteId, secondsFrom(zeroMs, since)])),
  };
}
