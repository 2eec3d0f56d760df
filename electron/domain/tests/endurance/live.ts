import { z } from "zod/mini";
import type { Elapsed, LaneState, LiveTest, Tap } from "../live.ts";
import { type EnduranceAttempt, type EnduranceParameters, howFarShape } from "./protocol.ts";

/** Two taps of one lane closer than this are one finger pressing twice: nobody does a round in two seconds. */
const bounceMs = 2000;

const what = z.discriminatedUnion("kind", [
  /** A round is done; the last one is the finish. */
  z.object({ kind: z.literal("round"), detail: z.object({}) }),
  /** The athlete stopped in a round; the rounds done are those tapped, unless given. */
  z.object({
    kind: z.literal("not-finished"),
    detail: z.object({
      repsDone: howFarShape.repsDone,
      roundsDone: z.exactOptional(howFarShape.roundsDone),
    }),
  }),
]);
/** A tap of this test's own kinds. */
export type EnduranceTap = z.infer<typeof what>;

/** The state folded from a lane's taps. */
export interface EnduranceKept {
  /** End of each round, in ms from time 0. */
  readonly splits: readonly number[];
  readonly seen: EnduranceAttempt | null;
}

export interface EnduranceLane extends LaneState<EnduranceAttempt> {
  /** End of each round, in ms from time 0; a finisher's last one is the finish. */
  readonly splits: readonly number[];
  /** The current round, from 1; the last one once finished. */
  readonly round: number;
  readonly finished: boolean;
}

function step(kept: EnduranceKept, tap: Tap & EnduranceTap, { rounds }: EnduranceParameters): EnduranceKept {
  if (kept.seen !== null || tap.atMs < 0) return kept;
  if (tap.kind === "not-finished") {
    const { repsDone, roundsDone = kept.splits.length } = tap.detail;
    return roundsDone >= rounds ? kept : { ...kept, seen: { finished: false, roundsDone, repsDone } };
  }
  if (tap.atMs - (kept.splits.at(-1) ?? 0) < bounceMs) return kept;
  const splits = [...kept.splits, tap.atMs];
  return { splits, seen: splits.length < rounds ? null : { finished: true, time: Math.ceil(tap.atMs) } };
}

function show(
  { splits, seen }: EnduranceKept,
  { rounds }: EnduranceParameters,
  elapsed: Elapsed,
): EnduranceLane {
  return {
    phase: seen !== null ? "done" : elapsed === null ? "ready" : "going",
    results: seen === null ? [] : [{ key: "mark", seen }],
    splits,
    round: Math.min(rounds, splits.length + 1),
    finished: seen?.finished === true,
  };
}

/**
 * Runs the circuit live: mass start, one clock, one tap per lane and round. Times are kept in ms; scoring rounds up to
 * 0.1 s. Source: common practice, no published source.
 */
export const liveEndurance: LiveTest<
  EnduranceParameters,
  EnduranceAttempt,
  EnduranceTap,
  EnduranceKept,
  EnduranceLane
> = {
  clock: "common",
  countInMs: () => 3000,
  what,
  empty: () => ({ splits: [], seen: null }),
  step,
  show,
};
