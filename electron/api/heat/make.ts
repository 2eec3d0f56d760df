import { clockOf } from "../../domain/heats/fold.ts";
import { Refusal } from "../../domain/refusal.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { lastVariant } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { type HeatLane, lanesOf, takeLane } from "../../store/tables/heat-lanes.ts";
import {
  addHeat,
  type Heat,
  type Holder,
  heatById,
  liveHeat,
  setLaneCount,
  startHeat,
} from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";
import { momentOf, requireHeat } from "../lanes/load.ts";
import { endIfOver } from "./over.ts";

/** The heat that a station wants to fill, or to make with this id. */
export interface WantedHeat {
  readonly test: TestCode;
  /** Whose heat it is: each device and the table fill their own. */
  readonly holder: Holder;
  readonly heatId: string;
  /** Number of lanes at the station. */
  readonly lanes: number;
  readonly by: string;
}

/**
 * Returns the holder's current heat, or a new one; a heat in which everybody is done ends now. Another window's heat is used
 * rather than made twice.
 * @throws Refusal `conflict` when its clock runs.
 */
export function heatToFill(db: WritableDb, desk: Desk, day: Day, wanted: WantedHeat): Heat {
  const live = liveHeat(db, day.id, wanted.test, wanted.holder);
  if (live === undefined || (live.id !== wanted.heatId && endIfOver(db, desk, live, wanted.by))) {
    return makeHeat(db, desk, day, wanted);
  }
  requireOpenLanes(live);
  if (wanted.lanes > live.lanes) setLaneCount(db, live.id, wanted.lanes);
  return { ...live, lanes: Math.max(live.lanes, wanted.lanes) };
}

/**
 * Makes a heat; one whose lanes go at their own pace runs from now on.
 * @throws Refusal `conflict` when that heat existed and has ended.
 */
export function makeHeat(db: WritableDb, desk: Desk, day: Day, wanted: WantedHeat): Heat {
  if (heatById(db, wanted.heatId) !== undefined) throw new Refusal("conflict", sentence("heat.ended"));
  const now = momentOf(desk);
  const { test, holder, heatId, lanes, by } = wanted;
  addHeat(db, { id: heatId, dayId: day.id, test, holder, lanes, gatheredAt: now.wall, gatheredBy: by });
  if (clockOf(test) === "own") startHeat(db, heatId, now, 0);
  return requireHeat(db, heatId).heat;
}

/** True if a heat's lanes can't change any more, because all of them began together. */
export function isFixed(heat: Heat): boolean {
  return heat.state === "ended" || (heat.state === "running" && clockOf(heat.test) === "common");
}

/** @throws Refusal `conflict` when a heat's lanes are fixed. */
export function requireOpenLanes(heat: Heat): void {
  if (isFixed(heat)) throw new Refusal("conflict", sentence("heat.runs"));
}

/** Returns the numbers of the empty lanes. */
export function freeLanes(db: ReadableDb, heat: Heat): number[] {
  const taken = new Set(lanesOf(db, heat.id).map(({ lane }) => lane));
  return Array.from({ length: heat.lanes }, (_, index) => index + 1).filter((lane) => !taken.has(lane));
}

/** Puts an athlete in a lane, with their last variant unless one is given. */
export function put(db: WritableDb, heat: Heat, lane: number, athleteId: number, how?: string): HeatLane {
  const variant = how ?? lastVariant(db, athleteId, heat.test) ?? protocolOf(heat.test).variants[0] ?? "";
  const taken = { lane, athleteId, variant };
  takeLane(db, heat, taken);
  return taken;
}
