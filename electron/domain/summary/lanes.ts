import type { AnyLane } from "../heats/fold.ts";
import { type HeatEvent, standingTaps } from "../heats/heat.ts";

/**
 * Returns a lane's working time in ms: from time 0 of a common start, or from the lane's own first tap, to its last tap
 * with an effect. Null where it did not do the whole test: then its time says nothing.
 * @param lane as the heat's taps fold
 */
export function workIn(clock: "common" | "own", lane: AnyLane, events: readonly HeatEvent[]): number | null {
  if (lane.phase !== "done" || lane.results.length === 0) return null;
  const idle = new Set(lane.idle);
  const times = standingTaps(events)
    .filter((tap) => (tap.lane === null || tap.lane === lane.lane) && !idle.has(tap.id))
    .map(({ atMs }) => atMs);
  if (times.length === 0) return null;
  const first = clock === "common" ? 0 : Math.min(...times);
  return Math.max(...times) - first;
}
