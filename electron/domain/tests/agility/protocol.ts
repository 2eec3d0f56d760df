import { z } from "zod/mini";
import { sentence } from "../../words.ts";
import { believe } from "../believable.ts";
import { frozen } from "../frozen.ts";
import type { Mark, Plausibility, Protocol } from "../protocol.ts";

const parameters = z.strictObject({
  /** Side of the taped cross in mm; 3 ft are 914 mm. */
  crossSize: z.int().check(z.minimum(300), z.maximum(2000)),
  /** Length of one trial, in seconds. */
  seconds: z.int().check(z.minimum(5), z.maximum(60)),
  /** Landings deducted for one touch of a line. In halves, so that the mean of two trials stays in whole quarters. */
  touchPenalty: z.number().check(z.minimum(0), z.maximum(4), z.multipleOf(0.5)),
});

/** Most quadrants left over: four are a lap. */
export const mostExtra = 3;

/** The most that each count of a trial can be: nobody does a hundred laps. */
export const mostOfCounts = { laps: 99, extra: mostExtra, touches: 99 } as const;

/** The counts of one trial. */
export const countShape = {
  /** Full laps of four quadrants. */
  laps: z.int().check(z.minimum(0), z.maximum(mostOfCounts.laps)),
  /** Quadrants of the lap that was not finished. */
  extra: z.int().check(z.minimum(0), z.maximum(mostOfCounts.extra)),
  /** Touches of a line. */
  touches: z.int().check(z.minimum(0), z.maximum(mostOfCounts.touches)),
};

const attempt = z.strictObject({ direction: z.enum(["cw", "ccw"]), ...countShape });

export type AgilityParameters = z.infer<typeof parameters>;
export type AgilityAttempt = z.infer<typeof attempt>;

export type Direction = AgilityAttempt["direction"];
/** The directions, clockwise first. */
export const directions: readonly Direction[] = ["cw", "ccw"];

/** Splits landings into laps and quadrants left over. */
export function lapsOf(landings: number): { readonly laps: number; readonly extra: number } {
  return { laps: Math.floor(landings / 4), extra: landings % 4 };
}

/** Scores one trial in half landings: whole numbers for any penalty, and never below zero. */
function halvesOf({ touchPenalty }: AgilityParameters, seen: AgilityAttempt): number {
  const landings = 4 * seen.laps + seen.extra;
  return Math.max(0, 2 * landings - 2 * touchPenalty * seen.touches);
}

/** Scores the mean of the two directions: half landings of both together are quarter landings of their mean. */
function score(frozenParameters: AgilityParameters, attempts: readonly AgilityAttempt[]): Mark {
  const missing = directions.filter((direction) => attempts.every((seen) => seen.direction !== direction));
  if (missing.length > 0) return { state: "incomplete", missing };
  const value = directions
    .map((direction) => attempts.filter((seen) => seen.direction === direction))
    .map((trials) => Math.max(...trials.map((seen) => halvesOf(frozenParameters, seen))))
    .reduce((sum, halves) => sum + halves, 0);
  return { state: "complete", value };
}

/** Judges one trial; the ranges are for single trials. */
function plausibility(frozenParameters: AgilityParameters, seen: AgilityAttempt): Plausibility {
  const value = halvesOf(frozenParameters, seen) / 2;
  return believe(value, {
    askBelow: [12, sentence("test.agility.plausibility.low", { value })],
    askAbove: [45, sentence("test.agility.plausibility.high", { value })],
    refuseAbove: [80, sentence("test.agility.plausibility.tooHigh", { value })],
  });
}

/**
 * Quadrant jump (agility): landings, higher is better, kept in quarter landings. Both directions make a mark.
 * Source: common practice, no published source (handbooks take the best of two in one direction); ranges ours.
 */
export const agility: Protocol<"agility", AgilityParameters, AgilityAttempt> = Object.freeze({
  code: "agility" as const,
  better: "higher" as const,
  grain: frozen({ unit: "landings" as const, perUnit: 4 }),
  equalWithin: 0,
  variants: frozen([""]),
  parameters,
  defaults: frozen({ crossSize: 914, seconds: 10, touchPenalty: 0.5 }),
  attempt,
  slot: (seen: AgilityAttempt) => seen.direction,
  slotSize: () => 1,
  score,
  plausibility,
  write: (value: number) => ({ number: String(value / 4), unit: "landings" as const }),
});
