import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { createCell } from "../../app/cell.ts";
import type { Live, LiveLane } from "./tool.ts";

/** Which athlete of which heat somebody chose to work with. Who, not where: they may be moved to another lane. */
const chosen = createCell<{ readonly heatId: string; readonly athleteId: number } | null>(null);

/** Works with a lane from now on. */
export function chooseLane(live: Live, lane: LiveLane): void {
  chosen.set({ heatId: live.heat.heatId, athleteId: lane.in.who.athleteId });
}

/**
 * The lane to work with where lanes go at their own pace: the one that was chosen, otherwise the first that is under
 * way, otherwise the first that has still to begin, otherwise the last. Null when nobody is in a lane.
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

/** `laneAtHand` for a part that renders again when another lane is chosen. */
export function useLaneAtHand<Test extends TestCode>(live: Live<Test>): LiveLane<Test> | null {
  chosen.use();
  return laneAtHand(live);
}

/** Lets the next lane that is not done come up by itself, once the one at hand is through. */
export function forgetLane(): void {
  chosen.set(null);
}

/** The lane before or after the one at hand, around the end. */
export function stepLane(live: Live, by: 1 | -1): void {
  const { lanes } = live;
  const at = laneAtHand(live);
  const next = lanes[(lanes.findIndex(({ lane }) => lane === at?.lane) + by + lanes.length) % lanes.length];
  if (next !== undefined) chooseLane(live, next);
}
