import { randomUUID } from "node:crypto";
import type { DayEvent } from "../../store/tables/day-events.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";

/** A line of a day's history at this moment, for what nobody has to explain. */
export function lineOf(desk: Pick<Desk, "now">, kind: "opened" | "closed"): DayEvent {
  const now = desk.now();
  return { id: randomUUID(), kind, at: now.toISOString(), on: isoDate(now), by: "", reason: "" };
}
