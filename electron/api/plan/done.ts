import { clockOf } from "../../domain/heats/fold.ts";
import type { DoneTurn } from "../../domain/plan/hall.ts";
import { isDone } from "../../domain/queue/queue.ts";
import { performedAt, upTo } from "../../domain/queue/times.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type TurnTime, turnTimesOfDay } from "../../store/reads/turn-times.ts";
import { marksOfDay } from "../../store/tables/marks.ts";

/** Returns how many seconds an instant (ISO 8601) lies after a moment in ms since 1970; negative before it. */
export function secondsFrom(zeroMs: number, instant: string): number {
  return (Date.parse(instant) - zeroMs) / 1000;
}

/**
 * Returns the turns of a day that have ended and whose times are known, in the order in which they ended. Seconds count
 * from `zero`, and no time lies after `now` (both ISO 8601). What was done twice ended with its last attempt.
 */
export function doneTurns(db: ReadableDb, dayId: number, zero: string, now: string): DoneTurn[] {
  const times = turnTimesOfDay(db, dayId);
  const doneAt = performedAt(upTo(times, now));
  const done = new Set(
    marksOfDay(db, dayId)
      .filter(({ mark }) => isDone(mark))
      .map(({ athleteId, test }) => `${athleteId} ${test}`),
  );
  const standing = times.filter(({ stands, athleteId, test }) => stands && done.has(`${athleteId} ${test}`));
  const zeroMs = Date.parse(zero);
  return [...Map.groupBy(standing, ({ athleteId, test }) => `${athleteId} ${test}`).values()]
    .flatMap((some) => turnOf(some, doneAt, zeroMs))
    .sort((a, b) => a.until - b.until);
}

/** One of its attempts without a time leaves the whole turn without one. */
function turnOf(
  attempts: readonly TurnTime[],
  doneAt: ReadonlyMap<string, string | null>,
  zeroMs: number,
): DoneTurn[] {
  const ends = attempts.map((attempt) => ({ attempt, at: doneAt.get(attempt.id) ?? null }));
  const known = ends.flatMap(({ attempt, at }) => (at === null ? [] : [{ attempt, at }]));
  const [last] = known.toSorted((a, b) => b.at.localeCompare(a.at));
  if (last === undefined || known.length < ends.length) return [];
  const { athleteId: athlete, test, heatId, heatZero } = last.attempt;
  // Where every lane has its own pace, the heat's beginning is nobody's.
  const isTogether = heatId !== null && heatZero !== null && clockOf(test) === "common";
  const from = isTogether ? secondsFrom(zeroMs, heatZero) : null;
  return [{ athlete, test, from, until: secondsFrom(zeroMs, last.at), heat: isTogether ? heatId : null }];
}
