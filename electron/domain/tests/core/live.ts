import { z } from "zod/mini";
import type { LaneState, LiveTest } from "../live.ts";
import { type CoreAttempt, type CoreParameters, longestHeld, type Stage, stageAt } from "./protocol.ts";

const what = z.object({ kind: z.literal("stop"), detail: z.object({}) });
/** A tap of this test's own kinds. */
export type CoreTap = z.infer<typeof what>;

/** The state folded from a lane's taps. */
export interface CoreKept {
  readonly heldMs: number | null;
}

export interface CoreLane extends LaneState<CoreAttempt> {
  /** Time held in all, or so far. */
  readonly heldMs: number;
  /** The current stage. */
  readonly stage: Stage;
}

/**
 * Runs the staged plank live: one clock, many lanes, one tap per lane. Source: common practice, no published source.
 */
export const liveCore: LiveTest<CoreParameters, CoreAttempt, CoreTap, CoreKept, CoreLane> = {
  clock: "common",
  countInMs: () => 3000,
  what,
  empty: () => ({ heldMs: null }),
  step(kept, tap) {
    if (kept.heldMs !== null || tap.atMs < 0) return kept;
    return { heldMs: Math.min(longestHeld, Math.floor(tap.atMs)) };
  },
  show(kept, parameters, elapsed) {
    const heldMs = kept.heldMs ?? Math.max(0, elapsed ?? 0);
    return {
      phase: kept.heldMs !== null ? "done" : elapsed === null ? "ready" : "going",
      results: kept.heldMs === null ? [] : [{ key: "mark", seen: { held: kept.heldMs } }],
      heldMs,
      stage: stageAt(parameters, heldMs / 1000),
    };
  },
};
