import { heightOf, type VerticalAttempt } from "../../../electron/domain/tests/vertical/protocol.ts";
import { storedOf } from "../live/stored.ts";
import type { LiveLane } from "../live/tool.ts";

/** Returns the heights of a lane's trials in grains as they are stored, those from before this heat first; null: cancelled. */
export function heightsOf(lane: LiveLane<"vertical">): (number | null)[] {
  const all = [...(lane.in.prior as VerticalAttempt[]), ...storedOf("vertical", lane)];
  return all.map((seen) => (seen === null ? null : heightOf(seen)));
}

/** Returns the key of each of those jumps by which its correction is found; null for one from before this heat. */
export function keysOfJumps(lane: LiveLane<"vertical">): (string | null)[] {
  return [...lane.in.prior.map(() => null), ...lane.state.results.map(({ key }) => key)];
}

/** Returns the best of them; null without any. */
export function bestOf(heights: readonly (number | null)[]): number | null {
  const there = heights.filter((height) => height !== null);
  return there.length === 0 ? null : Math.max(...there);
}
