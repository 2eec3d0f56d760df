import type { Known, PastDay } from "../../domain/plan/hall.ts";
import { knownFrom } from "../../domain/plan/known.ts";
import { usualSettings } from "../../domain/plan/settings.ts";
import { firstRow, type ReadableDb } from "../../store/connection/database.ts";
import { everybody } from "../../store/reads/present.ts";
import { planOfDay } from "../../store/tables/day-plans.ts";
import { allDays, type Day } from "../../store/tables/days.ts";
import { doneTurns, secondsFrom } from "./done.ts";
import { assumedHall } from "./hall.ts";

/** Newest closed days that stations' times are learnt from: halls and crews change (ours, no source). */
const mostDays = 6;
/** Fewest turns that a median is told of: with fewer an assumption says as much (ours, no source). */
const leastTurns = 8;

/** What was learnt, and by what it would change. */
const learnt = new WeakMap<ReadableDb, { readonly stamp: string; readonly known: readonly Known[] }>();

/**
 * Returns what earlier days of this store tell of the stations' times; a station of which too few turns are known is not
 * in it. Read again only when a day before may have changed: an entry of today must not wait for it.
 */
export function knownOf(db: ReadableDb, day: Day): readonly Known[] {
  const stamp = `${day.id} ${stampOf(db)}`;
  const there = learnt.get(db);
  if (there?.stamp === stamp) return there.known;
  const days = allDays(db)
    .filter(({ id, state }) => state === "closed" && id !== day.id)
    .slice(0, mostDays)
    .map((each) => pastDayOf(db, each));
  const known = knownFrom(days).filter(({ turns }) => turns >= leastTurns);
  learnt.set(db, { stamp, known });
  return known;
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
