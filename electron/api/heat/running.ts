import type { TestCode } from "../../domain/tests/registry.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { liveHeats } from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";

/** Returns the tests with a running heat clock. */
export function heatsRunning(desk: Desk): TestCode[] {
  const { db } = desk.store;
  const day = dayAtHand(db);
  if (day === undefined || day.state !== "open") return [];
  return liveHeats(db, day.id)
    .filter(({ state }) => state === "running")
    .map(({ test }) => test);
}

/** True if any heat's clock runs: then nobody may have to wake the screen first. */
export function anyHeatRuns(desk: Desk): boolean {
  return heatsRunning(desk).length > 0;
}
