import { z } from "zod/mini";
import { formatTime } from "../../units.ts";
import { type Sentence, sentence } from "../../words.ts";
import { believe } from "../believable.ts";
import { frozen } from "../frozen.ts";
import type { Plausibility, Protocol } from "../protocol.ts";

const parameters = z.strictObject({
  /**
   * Seconds of one cycle of stages. Only the one staging of `stages` is written down, and a mark's stage is worked out
   * from its seconds alone; another cycle would be another test, so there is no other value yet.
   */
  cycle: z.literal(240),
});

/** A day, in ms: a typing slip gets a sentence, not a shape error. No testing day's clock runs longer. */
export const longestHeld = 86_400_000;

const attempt = z.strictObject({
  /** Time held in ms. */
  held: z.int().check(z.minimum(0), z.maximum(longestHeld)),
});

export type CoreParameters = z.infer<typeof parameters>;
export type CoreAttempt = z.infer<typeof attempt>;

/** The stages of one cycle: name and first second. Source: common practice, no published source. */
const stages = [
  { name: "both-feet", from: 0 },
  { name: "one-foot", from: 60 },
  { name: "other-foot", from: 90 },
  { name: "one-arm", from: 120 },
  { name: "other-arm", from: 150 },
  { name: "arm-and-leg", from: 180 },
  { name: "other-arm-and-leg", from: 210 },
] as const;

export type StageName = (typeof stages)[number]["name"];

/** The stage of a plank at a moment. Seconds count from the start of the hold. */
export interface Stage {
  /** From 1. */
  readonly round: number;
  readonly name: StageName;
  /** First second of this stage in this round. */
  readonly from: number;
  /** First second of the next stage, when it changes. */
  readonly until: number;
  readonly sentence: Sentence;
}

/** The stage that begins at or before `seconds` (0 or more, fractions allowed): 59.9 is both feet down, 60 is one foot up. */
export function stageAt({ cycle }: CoreParameters, seconds: number): Stage {
  const round = Math.floor(seconds / cycle) + 1;
  const start = (round - 1) * cycle;
  const index = stages.findLastIndex((candidate) => start + candidate.from <= seconds);
  const { name, from } = stages[index] ?? stages[0];
  const words = round === 1 ? sentence(`stages.first.${name}`) : sentence(`stages.later.${name}`, { round });
  return {
    round,
    name,
    from: start + from,
    until: start + (stages[index + 1]?.from ?? cycle),
    sentence: words,
  };
}

/** Returns whole seconds, rounded down: rounding a held time up would reward it. */
function secondsOf(seen: CoreAttempt): number {
  return Math.floor(seen.held / 1000);
}

function plausibility(_parameters: CoreParameters, seen: CoreAttempt): Plausibility {
  const seconds = secondsOf(seen);
  const value = formatTime(seconds * 1000, false);
  return believe(seconds, {
    askBelow: [15, sentence("test.core.plausibility.low", { value })],
    askAbove: [600, sentence("test.core.plausibility.high", { value })],
    refuseAbove: [3600, sentence("test.core.plausibility.tooHigh", { value })],
  });
}

const defaults: CoreParameters = frozen({ cycle: 240 });

/**
 * Staged plank (core): whole seconds held, higher is better. One grain is one second, as the rule has nothing finer.
 * Source: common practice, no published source; ranges ours.
 */
export const core: Protocol<"core", CoreParameters, CoreAttempt> = Object.freeze({
  code: "core" as const,
  better: "higher" as const,
  grain: frozen({ unit: "s" as const, perUnit: 1 }),
  equalWithin: 0,
  variants: frozen([""]),
  parameters,
  defaults,
  attempt,
  slot: () => "",
  slotSize: () => 1,
  score: (_parameters: CoreParameters, attempts: readonly CoreAttempt[]) => ({
    state: "complete" as const,
    value: Math.max(...attempts.map(secondsOf)),
  }),
  plausibility,
  write: (value: number) => ({
    number: formatTime(value * 1000, false),
    unit: "min:s" as const,
    note: stageAt(defaults, value).sentence,
  }),
});
