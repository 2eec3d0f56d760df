import type { PlaceAmongOthers } from "../../electron/api/place/among.ts";
import { placesOn } from "../../electron/api/place/place.ts";
import { dayById } from "../../electron/store/tables/days.ts";
import type { BoardDay } from "./board-day.ts";

/** Returns the place that a bib's push-ups have on the day, of as many as the bib's number. */
export function placeIn(day: BoardDay, bib: number): PlaceAmongOthers | null {
  const { db } = day.desk.store;
  const held = dayById(db, day.dayId);
  if (held === undefined) throw new Error("The day is gone.");
  return placesOn(
    db,
    held,
  )({ athleteId: day.ids[bib - 1] ?? 0, test: "push-up", variant: "full", value: bib });
}
