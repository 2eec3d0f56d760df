import { clockOf } from "../../../../../electron/domain/heats/fold.ts";
import type { Live, LiveLane } from "../../../../tests/live/tool.ts";

/** True for a lane whose athlete is at it, or has not begun. */
export function isGoing({ state: { phase } }: LiveLane): boolean {
  return phase === "going" || phase === "ready";
}

/**
 * True if doubtful results are asked about now. Where all start together the questions wait until the last one is done:
 * eyes and hands belong to those who are still at it, and a question that needs room would push their lanes away.
 */
export function asksNow(live: Live): boolean {
  return clockOf(live.test) === "own" || !live.lanes.some(isGoing);
}
