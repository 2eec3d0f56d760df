import { z } from "zod/mini";
import { sentence } from "../../words.ts";
import { believe, refuse } from "../believable.ts";
import { frozen } from "../frozen.ts";
import type { Plausibility, Protocol } from "../protocol.ts";

/** Cadences off at the end that a tally from paper can name. */
const mostOffAtEnd = 3;
/** Cadences that an attempt can hold: twenty minutes at 40 beats a minute. */
export const mostCadences = 400;

const parameters = z.strictObject({
  /** Beats per minute of the metronome. */
  bpm: z.int().check(z.minimum(20), z.maximum(120)),
  /** Beats per rep; the last of them, at the top, is the judging one. */
  beatsPerRep: z.int().check(z.minimum(1), z.maximum(8)),
  /** Off cadences in a row that end the test. A paper tally holds no more. */
  missesToStop: z.int().check(z.minimum(1), z.maximum(mostOffAtEnd)),
});

const cadences = z.strictObject({
  how: z.literal("cadences"),
  /** One character per cadence, in order: "." on the beat, "x" off. */
  cadences: z.string().check(z.maxLength(mostCadences), z.regex(/^[.x]*$/)),
});

const tally = z
  .strictObject({
    how: z.literal("tally"),
    /** All cadences gone by, the off ones and skipped beats among them. */
    reps: z.int().check(z.minimum(0), z.maximum(999)),
    offAtEnd: z.int().check(z.minimum(0), z.maximum(mostOffAtEnd)),
  })
  .check(
    z.refine((attempt) => attempt.offAtEnd <= attempt.reps, {
      path: ["offAtEnd"],
      params: { sentence: sentence("test.push-up.plausibility.offMoreThanReps") },
    }),
  );

const attempt = z.discriminatedUnion("how", [cadences, tally]);

export type PushUpParameters = z.infer<typeof parameters>;
export type PushUpAttempt = z.infer<typeof attempt>;

/** Returns the cadences until the test ended by the misses in a row, or because the athlete stopped. */
function cadencesHeld(missesToStop: number, cadencesSeen: string): string {
  const end = cadencesSeen.indexOf("x".repeat(missesToStop));
  return end < 0 ? cadencesSeen : cadencesSeen.slice(0, end + missesToStop);
}

/** Counts reps up to the last cadence that was on: a single miss before it counts, the final misses do not. */
function repsOf({ missesToStop }: PushUpParameters, seen: PushUpAttempt): number {
  if (seen.how === "tally") return seen.reps - seen.offAtEnd;
  return cadencesHeld(missesToStop, seen.cadences).lastIndexOf(".") + 1;
}

function plausibility(frozenParameters: PushUpParameters, seen: PushUpAttempt): Plausibility {
  const { missesToStop } = frozenParameters;
  if (seen.how === "tally" && seen.offAtEnd > missesToStop) {
    return refuse(sentence("test.push-up.plausibility.offMoreThanStop", { count: missesToStop }));
  }
  if (seen.how === "cadences" && cadencesHeld(missesToStop, seen.cadences) !== seen.cadences) {
    return refuse(sentence("test.push-up.plausibility.afterTheEnd", { count: missesToStop }));
  }
  const value = repsOf(frozenParameters, seen);
  return believe(value, {
    askBelow: [1, sentence("test.push-up.plausibility.low", { value })],
    askAbove: [80, sentence("test.push-up.plausibility.high", { value })],
    refuseAbove: [300, sentence("test.push-up.plausibility.tooHigh", { value })],
  });
}

/**
 * Cadence push-up (strength): reps, higher is better. Full and knee push-ups never compare; the attempt holds the
 * variant. Source: common practice, no published source; ranges ours.
 */
export const pushUp: Protocol<"push-up", PushUpParameters, PushUpAttempt> = Object.freeze({
  code: "push-up" as const,
  better: "higher" as const,
  grain: frozen({ unit: "reps" as const, perUnit: 1 }),
  equalWithin: 0,
  variants: frozen(["full", "knee"]),
  parameters,
  defaults: frozen({ bpm: 40, beatsPerRep: 2, missesToStop: 3 }),
  attempt,
  slot: () => "",
  slotSize: () => 1,
  score: (frozenParameters: PushUpParameters, attempts: readonly PushUpAttempt[]) => ({
    state: "complete" as const,
    value: Math.max(...attempts.map((seen) => repsOf(frozenParameters, seen))),
  }),
  plausibility,
  write: (value: number) => ({ number: String(value), unit: "reps" as const }),
});
