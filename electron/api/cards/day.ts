import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allDays, type Day, dayAtHand, dayById } from "../../store/tables/days.ts";

/** Returns the default day for cards: the one being held, else the last closed one. */
function usualDay(db: ReadableDb): Day | null {
  const atHand = dayAtHand(db);
  if (atHand?.state === "open") return atHand;
  return allDays(db).find(({ state }) => state === "closed") ?? atHand ?? null;
}

/**
 * Returns the day with this id, or the default one for null; null when there is no day at all.
 * @throws Refusal `not-found` when no day has this id.
 */
export function cardDay(db: ReadableDb, dayId: number | null): Day | null {
  if (dayId === null) return usualDay(db);
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("cards.noSuchDay"));
  return day;
}
