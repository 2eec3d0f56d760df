import type { TestCode } from "../../domain/tests/registry.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { type Heat, liveHeats } from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";

/** Returns the tests of which a heat of the table itself runs: a device's heat is tapped at that device. */
export function heatsAtTable(desk: Desk): TestCode[] {
  return heatsRunning(desk)
    .filter(({ holder }) => holder === null)
    .map(({ test }) => test);
}

function heatsRunning(desk: Desk): Heat[] {
  const { db } = desk.store;
  const day = dayAtHand(db);
  if (day === undefined || day.state !== "open") return [];
  return liveHeats(db, day.id).filter(({ state }) => state === "running");
}

/**
 * True if a heat of the table itself runs: then the table does not lock, since nobody could tap. A device's heat goes on
 * whatever the table does.
 */
export function runsAtTable(desk: Desk): boolean {
  return heatsAtTable(desk).length > 0;
}

/** True if any heat runs, at the table or at a device: then the computer that holds the store may not fall asleep. */
export function anyHeatRuns(desk: Desk): boolean {
  return heatsRunning(desk).length > 0;
}
