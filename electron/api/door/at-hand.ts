import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Day, dayAtHand } from "../../store/tables/days.ts";

/** Returns the day being prepared or held. @throws Refusal `unavailable` when there is none. */
export function requireDay(db: ReadableDb): Day {
  const day = dayAtHand(db);
  if (day === undefined) throw new Refusal("unavailable", sentence("day.none"));
  return day;
}

/** Returns the open day, for check-in and attempts. @throws Refusal `unavailable` without one, or before it opens. */
export function requireOpenDay(db: ReadableDb): Day {
  const day = requireDay(db);
  if (day.state !== "open") throw new Refusal("unavailable", sentence("day.notOpen"));
  return day;
}
