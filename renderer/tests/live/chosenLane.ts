import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { createCell } from "../../app/cell.ts";
import type { Live, LiveLane } from "./tool.ts";

/** The chosen athlete of a heat. By athlete, not by lane, since they may be moved to another one. */
const chosen = createCell<{ readonly heatId: string; readonly athleteId: number } | null>(null);

/** Makes a lane the current one. */
export function chooseLane(live: Live, lane: LiveLane): void {
  chosen.set({ heatId: live.heat.heatId, athleteId: lane.in.who.athleteId });
}

/**
 * Returns the current lane where lanes go at their own pace: the chosen one, otherwise the first under way, otherwise
 * the first not begun, otherwise the last. Null when all lanes are empty.
 */
export function laneAtHand<Test extends TestCode>(live: Live<Test>): LiveLane<Test> | null {
  const wanted = chosen.get();
  const { lanes } = live;
  return (
    lanes.find(
      ({ in: { who } }) => wanted?.heatId === live.heat.heatId && who.athleteId === wanted.athleteId,
    ) ??
    lanes.find(({ state }) => state.phase === "going") ??
    lanes.find(({ state }) => state.phase === "ready") ??
    lanes.at(-1) ??
    null
  );
}

/** Returns `laneAtHand` for a component, which renders again when another lane is chosen. */
export function useLaneAtHand<Test extends TestCode>(live: Live<Test>): LiveLane<Test> | null {
  chosen.use();
  return laneAtHand(live);
}

/** Lets the next unfinished lane become current by itself, once this one is done. */
export function forgetLane(): void {
  chosen.set(null);
}

/** Moves to the previous or next lane, around the end. */
export function stepLane(live: Live, by: 1 | -1): void {
  const { lanes } = live;
  const at = laneAtHand(live);
  const next = lanes[(lanes.findIndex(({ lane }) => lane === at?.lane) + by + lanes.length) % lanes.length];
  if (next !== undefined) chooseLane(live, next);
}
