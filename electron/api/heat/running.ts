import { dayAtHand } from "../../store/days.ts";
import { liveHeats } from "../../store/heats.ts";
import type { Desk } from "../desk.ts";

/** Whether the clock of any heat runs just now: then nobody may have to wake the screen first. */
export function anyHeatRuns(desk: Desk): boolean {
  const { db } = desk.store;
  const day = dayAtHand(db);
  if (day === undefined || day.state !== "open") return false;
  return liveHeats(db, day.id).some(({ state }) => state === "running");
}
