import { z } from "zod";
import { type CoreAttempt, type CoreParameters, type Stage, stageAt } from "../protocols/core.ts";
import type { LaneState, LiveTest } from "./heat.ts";

const what = z.object({ kind: z.literal("stop"), detail: z.object({}) });
type Own = z.infer<typeof what>;

interface Kept {
  readonly heldMs: number | null;
}

export interface CoreLane extends LaneState<CoreAttempt> {
  /** Held in all, or up to now. */
  readonly heldMs: number;
  /** The stage reached. */
  readonly stage: Stage;
}

/** A day: no attempt takes more, and no clock of a testing day runs longer. */
const longest = 86_400_000;

/** Staged plank: one clock, many lanes, one tap a lane. Source: common practice, no published source. */
export const liveCore: LiveTest<CoreParameters, CoreAttempt, Own, Kept, CoreLane> = {
  clock: "common",
  countInMs: () => 3000,
  what,
  empty: () => ({ heldMs: null }),
  step(kept, tap) {
    if (kept.heldMs !== null || tap.atMs < 0) return kept;
    return { heldMs: Math.min(longest, Math.floor(tap.atMs)) };
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
