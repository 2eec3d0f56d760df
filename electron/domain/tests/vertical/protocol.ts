import { z } from "zod";
import { formatLength } from "../../units.ts";
import { type Sentence, sentence } from "../../words.ts";
import { ask, believe, fine, refuse, worse } from "../believable.ts";
import { frozen } from "../frozen.ts";
import type { LengthUnit, Plausibility, Protocol } from "../protocol.ts";

const parameters = z.strictObject({
  /** Number of trials; the best counts. */
  trials: z.int().min(1).max(10),
});

/** A height on the tape, in mm. */
export const reach = z.int().min(0).max(5000);
/** Body mass in g. */
export const mass = z.int().min(0).max(500_000);

const attempt = z.strictObject({
  /** Highest point touched standing, in mm. */
  standingReach: reach,
  /** Highest point touched in the jump, in mm. */
  touchReach: reach,
  /** Body mass in g, only for the estimate of power. */
  bodyMass: mass.optional(),
});

export type VerticalParameters = z.infer<typeof parameters>;
export type VerticalAttempt = z.infer<typeof attempt>;

function heightOf(seen: VerticalAttempt): number {
  return seen.touchReach - seen.standingReach;
}

/** True for a plausible body mass: 20 to 300 kg. Ours, no source. */
function isBodyMass(massGrams: number): boolean {
  return massGrams >= 20_000 && massGrams <= 300_000;
}

/**
 * Estimates the peak power in watts of a jump of `heightMm` millimetres by a body of `massGrams` grams: 60.7 × height
 * (cm) + 45.3 × mass (kg) − 2055. An estimate, never ranked; below zero it is meaningless. Null for an implausible body
 * mass.
 * Source: Sayers et al. 1999, Med Sci Sports Exerc 31(4), 572–577, squat-jump form.
 */
export function peakPower(heightMm: number, massGrams: number): number | null {
  if (!isBodyMass(massGrams)) return null;
  // Whole numbers until the last step, so that no rounding creeps in.
  return (60_700 * heightMm + 453 * massGrams - 20_550_000) / 10_000;
}

function heightPlausibility(seen: VerticalAttempt): Plausibility {
  const height = heightOf(seen);
  const values = { cm: formatLength(height, "cm"), inches: formatLength(height, "in") };
  return believe(height, {
    refuseBelow: [0, sentence("test.vertical.plausibility.touchBelowReach")],
    askBelow: [100, sentence("test.vertical.plausibility.low", values)],
    askAbove: [750, sentence("test.vertical.plausibility.high", values)],
    refuseAbove: [1300, sentence("test.vertical.plausibility.tooHigh", values)],
  });
}

/** Returns the question about an unusual standing reach, in mm; null between 1200 and 3000 (ours). */
export function reachQuestion(standingReach: number): Sentence | null {
  if (standingReach >= 1200 && standingReach <= 3000) return null;
  const values = { cm: formatLength(standingReach, "cm"), inches: formatLength(standingReach, "in") };
  return sentence("test.vertical.plausibility.reach", values);
}

/** Judges the reach as well: one entered in the wrong unit still leaves a believable height. */
function reachPlausibility({ standingReach }: VerticalAttempt): Plausibility {
  const question = reachQuestion(standingReach);
  return question === null ? fine : ask(question);
}

function massPlausibility({ bodyMass }: VerticalAttempt): Plausibility {
  if (bodyMass === undefined || isBodyMass(bodyMass)) return fine;
  return refuse(sentence("test.vertical.plausibility.mass", { kilograms: bodyMass / 1000 }));
}

/**
 * Vertical leap (power): highest touch − standing reach, best of the trials, in mm; read in cm or inches.
 * Source: common practice, no published source; ranges ours.
 */
export const vertical: Protocol<"vertical", VerticalParameters, VerticalAttempt> = Object.freeze({
  code: "vertical" as const,
  better: "higher" as const,
  grain: frozen({ unit: "cm" as const, perUnit: 10 }),
  equalWithin: 1,
  variants: frozen([""]),
  parameters,
  defaults: frozen({ trials: 3 }),
  attempt,
  slot: () => "",
  slotSize: ({ trials }: VerticalParameters) => trials,
  score: (_parameters: VerticalParameters, attempts: readonly VerticalAttempt[]) => ({
    state: "complete" as const,
    value: Math.max(...attempts.map(heightOf)),
  }),
  plausibility: (_parameters: VerticalParameters, seen: VerticalAttempt) =>
    worse(worse(heightPlausibility(seen), massPlausibility(seen)), reachPlausibility(seen)),
  write: (value: number, lengths: LengthUnit) => ({ number: formatLength(value, lengths), unit: lengths }),
});
