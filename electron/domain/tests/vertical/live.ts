import { z } from "zod/mini";
import type { Length } from "../../length.ts";
import type { LaneResult, LaneState, LiveTest, Tap } from "../live.ts";
import { heightOf, mass, reach, type VerticalAttempt, type VerticalParameters } from "./protocol.ts";

/** Where the length of a tap stands: `mm` in those of before lengths were kept as they were read. */
const lengthOfTap = z.union([
  z.object({ length: reach }),
  z.pipe(
    z.object({ mm: reach }),
    z.transform(({ mm }) => ({ length: mm })),
  ),
]);

const what = z.discriminatedUnion("kind", [
  /** Standing reach, and the mass in g where power is wanted; applies to the trials after it. */
  z.object({
    kind: z.literal("reach"),
    detail: z.intersection(lengthOfTap, z.object({ bodyMass: z.exactOptional(mass) })),
  }),
  /** A trial: the highest point touched. */
  z.object({ kind: z.literal("touch"), detail: lengthOfTap }),
  /** Ends the trials, though there are some left. */
  z.object({ kind: z.literal("enough"), detail: z.object({}) }),
]);
/** A tap of this test's own kinds. */
export type VerticalTap = z.infer<typeof what>;

/** The state folded from a lane's taps. */
export interface VerticalKept {
  readonly standingReach: Length | null;
  readonly bodyMass: number | null;
  readonly prior: readonly VerticalAttempt[];
  readonly trials: readonly LaneResult<VerticalAttempt>[];
  readonly enough: boolean;
}

export interface VerticalLane extends LaneState<VerticalAttempt> {
  /** Null until it is measured. */
  readonly standingReach: Length | null;
  readonly bodyMass: number | null;
  /** Heights jumped in grains, those from before this heat first. */
  readonly heights: readonly number[];
  readonly best: number | null;
  readonly trialsLeft: number;
}

function touched(kept: VerticalKept, tap: Tap, touchReach: Length, trials: number): VerticalKept {
  const { standingReach, bodyMass } = kept;
  const full = kept.prior.length + kept.trials.length >= trials;
  if (standingReach === null || kept.enough || full) return kept;
  const seen = { standingReach, touchReach, ...(bodyMass !== null && { bodyMass }) };
  return { ...kept, trials: [...kept.trials, { key: tap.id, seen }] };
}

function step(kept: VerticalKept, tap: Tap & VerticalTap, { trials }: VerticalParameters): VerticalKept {
  switch (tap.kind) {
    case "reach":
      return { ...kept, standingReach: tap.detail.length, bodyMass: tap.detail.bodyMass ?? kept.bodyMass };
    case "touch":
      return touched(kept, tap, tap.detail.length, trials);
    case "enough":
      return kept.prior.length + kept.trials.length === 0 ? kept : { ...kept, enough: true };
  }
}

function show(kept: VerticalKept, { trials }: VerticalParameters): VerticalLane {
  const { standingReach, bodyMass } = kept;
  const all = [...kept.prior, ...kept.trials.map(({ seen }) => seen)];
  const heights = all.map(heightOf);
  const trialsLeft = kept.enough ? 0 : Math.max(0, trials - all.length);
  const begun = standingReach !== null || all.length > 0;
  return {
    phase: trialsLeft === 0 ? "done" : begun ? "going" : "ready",
    results: kept.trials,
    standingReach,
    bodyMass,
    heights,
    best: heights.length === 0 ? null : Math.max(...heights),
    trialsLeft,
  };
}

/**
 * Runs the vertical leap live: no clock; the standing reach once, then trials, with the best so far on show. Trials and
 * a reach from earlier today count. Source: common practice, no published source.
 */
export const liveVertical: LiveTest<
  VerticalParameters,
  VerticalAttempt,
  VerticalTap,
  VerticalKept,
  VerticalLane
> = {
  clock: "own",
  countInMs: () => 0,
  what,
  empty: (_parameters, prior) => ({
    standingReach: prior.at(-1)?.standingReach ?? null,
    bodyMass: prior.at(-1)?.bodyMass ?? null,
    prior,
    trials: [],
    enough: false,
  }),
  step,
  show,
};
