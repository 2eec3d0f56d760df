import { dayAtHand } from "../store/tables/days.ts";
import type { Desk } from "./door/desk.ts";
import { anyHeatRuns } from "./heat/running.ts";

/**
 * True if the display has to stay awake: a day is open, or in the demo a heat's clock runs. A demo that somebody left
 * open is no reason to stay awake for ever.
 */
export function needsAwake(desk: Desk): boolean {
  if (desk.kind === "demo") return anyHeatRuns(desk);
  return dayAtHand(desk.store.db)?.state === "open";
}
