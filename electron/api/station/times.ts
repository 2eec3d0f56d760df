import { type TimedAttempt, upTo } from "../../domain/queue/times.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { attemptTimes } from "../../store/tables/attempts.ts";

/** Corrected times of attempts that were ahead of the clock: the moment each was first noticed, by attempt. */
const broughtBack = new WeakMap<ReadableDb, Map<string, string>>();

/**
 * Returns each attempt's time on a day, as far as the wall clock at `now` (ISO 8601) is credible: never later. A time
 * ahead of it counts as the moment it was first noticed, so that the rest after it ends.
 */
export function timesBy(db: ReadableDb, dayId: number, now: string): TimedAttempt[] {
  const kept = broughtBack.get(db) ?? new Map<string, string>();
  const told = attemptTimes(db, dayId).map((attempt) => {
    const before = kept.get(attempt.id);
    return before !== undefined && before < attempt.at ? { ...attempt, at: before } : attempt;
  });
  for (const { id, at } of told) if (at > now) kept.set(id, now);
  if (kept.size > 0) broughtBack.set(db, kept);
  return upTo(told, now);
}
