import { clockOf } from "../../domain/heats/fold.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { endHeat, type Heat, liveHeats } from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";
import { type LoadedHeat, lanesAt, load } from "../lanes/load.ts";

/** Returns lanes neither done nor set aside. In own-pace heats, athletes who have not begun may simply leave. */
export function openLanes(loaded: LoadedHeat): number[] {
  const own = clockOf(loaded.heat.test) === "own";
  return lanesAt(loaded, 0)
    .filter(({ phase }) => phase === "going" || (phase === "ready" && !own))
    .map(({ lane }) => lane);
}

/** True if somebody has taken part and everybody is done. */
export function isOver(loaded: LoadedHeat): boolean {
  if (loaded.heat.state !== "running" || openLanes(loaded).length > 0) return false;
  return lanesAt(loaded, 0).some(({ phase }) => phase === "done" || phase === "aside");
}

/** Ends a heat that is over; false if it is not. */
export function endIfOver(db: WritableDb, desk: Desk, heat: Heat, by: string): boolean {
  if (!isOver(load(db, heat))) return false;
  endHeat(db, heat.id, { ending: "done", reason: "", by, at: desk.now().toISOString() });
  return true;
}

/**
 * Refuses to end anything while athletes are in a heat: their stops could not be entered any more.
 * @throws Refusal `conflict` when somebody is still going in a heat of the day.
 */
export function requireNobodyGoing(db: ReadableDb, dayId: number): void {
  const going = liveHeats(db, dayId).filter(
    (heat) => heat.state === "running" && openLanes(load(db, heat)).length > 0,
  );
  if (going.length > 0)
    throw new Refusal("conflict", sentence("heat.beforeClosing", { count: going.length }));
}
