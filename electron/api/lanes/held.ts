import type { ReadableDb } from "../../store/connection/database.ts";
import { type TakenLane, takenLanes } from "../../store/tables/heat-lanes.ts";
import { type Heat, liveHeats } from "../../store/tables/heats.ts";
import { lanesAt, load } from "./load.ts";

/**
 * Returns the lanes that hold their athletes. A lane that is done or set aside holds nobody, whether or not somebody
 * ends its heat: its athlete rests and goes on to the next test.
 */
export function heldLanes(db: ReadableDb, dayId: number): TakenLane[] {
  const left = new Map(liveHeats(db, dayId).map((heat) => [heat.id, leftLanes(db, heat)]));
  return takenLanes(db, dayId).filter(({ heatId, lane }) => left.get(heatId)?.has(lane) !== true);
}

function leftLanes(db: ReadableDb, heat: Heat): ReadonlySet<number> {
  const left = lanesAt(load(db, heat), 0).filter(({ phase }) => phase === "done" || phase === "aside");
  return new Set(left.map(({ lane }) => lane));
}

/** Returns the athletes in lanes that hold them. */
export function heldAthletes(db: ReadableDb, dayId: number): ReadonlySet<number> {
  return new Set(heldLanes(db, dayId).map(({ athleteId }) => athleteId));
}
