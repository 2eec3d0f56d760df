import { z } from "zod/mini";
import { formatTime } from "../../units.ts";
import { sentence } from "../../words.ts";
import { believe, fine, refuse } from "../believable.ts";
import { frozen } from "../frozen.ts";
import type { Mark, Plausibility, Protocol, Unfinished } from "../protocol.ts";

const exerciseNames = ["skater-strides", "lunge-jumps", "high-knees", "squat-thrusts"] as const;

/** How many sides each exercise has, whatever is typed: strides, lunges and knees go left and right. */
const sidesOf = { "skater-strides": 2, "lunge-jumps": 2, "high-knees": 2, "squat-thrusts": 1 } as const;

const exercise = z
  .pipe(
    z.strictObject({
      exercise: z.enum(exerciseNames),
      /** Reps in all: 20 of a two-sided exercise are 10 per side. */
      count: z.int().check(z.minimum(1), z.maximum(200)),
      sides: z.union([z.literal(1), z.literal(2)]),
    }),
    z.transform((typed) => ({ ...typed, sides: sidesOf[typed.exercise] })),
  )
  .check(
    z.refine(({ count, sides }) => count % sides === 0, {
      path: ["count"],
      params: { sentence: sentence("test.endurance.plausibility.oddCount") },
    }),
  );

const parameters = z.strictObject({
  rounds: z.int().check(z.minimum(1), z.maximum(10)),
  /** One round, in order. */
  exercises: z.array(exercise).check(z.minLength(1), z.maxLength(12)),
});

/** The progress of an athlete who stopped. */
export const howFarShape = {
  /** Whole rounds done. */
  roundsDone: z.int().check(z.minimum(0), z.maximum(9)),
  /** Reps done in the round that was not finished. */
  repsDone: z.int().check(z.minimum(0), z.maximum(2400)),
};

const finishedAttempt = z.strictObject({
  finished: z.literal(true),
  /** Time for all rounds, in ms. */
  time: z.int().check(z.minimum(0), z.maximum(86_400_000)),
});

const stoppedAttempt = z.strictObject({ finished: z.literal(false), ...howFarShape });

const attempt = z.discriminatedUnion("finished", [finishedAttempt, stoppedAttempt]);

export type EnduranceParameters = z.infer<typeof parameters>;
export type EnduranceAttempt = z.infer<typeof attempt>;
type Finished = z.infer<typeof finishedAttempt>;
type Stopped = z.infer<typeof stoppedAttempt>;

/** Rounds up to the next tenth, in whole ms: 10.11 s → 10.2 s. Source: World Athletics rule for hand timing. */
function roundedUp(time: number): number {
  return Math.ceil(time / 100) * 100;
}

/** Scores a finish above every stop; among stops, rounds decide before reps. */
function score(_parameters: EnduranceParameters, attempts: readonly EnduranceAttempt[]): Mark {
  const times = attempts.filter((seen): seen is Finished => seen.finished).map(({ time }) => roundedUp(time));
  if (times.length > 0) return { state: "complete", value: Math.min(...times) };
  const [farthest] = attempts
    .filter((seen): seen is Stopped => !seen.finished)
    .sort((a, b) => b.roundsDone - a.roundsDone || b.repsDone - a.repsDone);
  return { state: "unfinished", rounds: farthest?.roundsDone ?? 0, reps: farthest?.repsDone ?? 0 };
}

/** Returns the reps that somebody did who stopped, of those of the whole circuit. */
export function repsDone({ rounds, exercises }: EnduranceParameters, stopped: Unfinished) {
  const ofRound = repsOfRound(exercises);
  return { done: stopped.rounds * ofRound + stopped.reps, of: rounds * ofRound };
}

function repsOfRound(exercises: EnduranceParameters["exercises"]): number {
  return exercises.reduce((sum, { count }) => sum + count, 0);
}

function stoppedPlausibility({ rounds, exercises }: EnduranceParameters, seen: Stopped): Plausibility {
  if (seen.roundsDone >= rounds)
    return refuse(sentence("test.endurance.plausibility.allRounds", { count: rounds }));
  const reps = repsOfRound(exercises);
  if (seen.repsDone >= reps)
    return refuse(sentence("test.endurance.plausibility.wholeRound", { count: reps }));
  return fine;
}

function plausibility(frozenParameters: EnduranceParameters, seen: EnduranceAttempt): Plausibility {
  if (!seen.finished) return stoppedPlausibility(frozenParameters, seen);
  const mark = roundedUp(seen.time);
  const value = formatTime(mark, true);
  return believe(mark, {
    refuseBelow: [45_000, sentence("test.endurance.plausibility.tooLow", { value })],
    askBelow: [120_000, sentence("test.endurance.plausibility.low", { value })],
    askAbove: [900_000, sentence("test.endurance.plausibility.high", { value })],
    refuseAbove: [3_600_000, sentence("test.endurance.plausibility.tooHigh", { value })],
  });
}

/**
 * Circuit (endurance): time to finish all rounds in ms, rounded up to a tenth of a second; lower is better.
 * Source: common practice, no published source; all counts but the first and the ranges are ours.
 */
export const endurance: Protocol<"endurance", EnduranceParameters, EnduranceAttempt> = Object.freeze({
  code: "endurance" as const,
  better: "lower" as const,
  grain: frozen({ unit: "s" as const, perUnit: 1000 }),
  equalWithin: 0,
  variants: frozen([""]),
  parameters,
  defaults: frozen<EnduranceParameters>({
    rounds: 3,
    exercises: [
      { exercise: "skater-strides", count: 20, sides: 2 },
      { exercise: "lunge-jumps", count: 20, sides: 2 },
      { exercise: "high-knees", count: 40, sides: 2 },
      { exercise: "squat-thrusts", count: 10, sides: 1 },
    ],
  }),
  attempt,
  slot: () => "",
  slotSize: () => 1,
  score,
  plausibility,
  write: (value: number) => ({ number: formatTime(value, true), unit: "min:s" as const }),
});
