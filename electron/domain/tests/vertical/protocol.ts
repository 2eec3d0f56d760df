import { z } from "zod/mini";
import { grainsOf, grainsPerCentimetre, type Length, lengthOrMillimetres } from "../../length.ts";
import { formatLength } from "../../units.ts";
import { type Sentence, sentence } from "../../words.ts";
import { ask, believe, fine, refuse, worse } from "../believable.ts";
import { frozen } from "../frozen.ts";
import type { LengthUnit, Plausibility, Protocol } from "../protocol.ts";

const parameters = z.strictObject({
  /** Number of trials; the best counts. */
  trials: z.int().check(z.minimum(1), z.maximum(10)),
});

/** A height on the tape, as it was read. */
export const reach = lengthOrMillimetres;
/** Body mass in g. */
export const mass = z.int().check(z.minimum(0), z.maximum(500_000));

const attempt = z.strictObject({
  /** Highest point touched standing. */
  standingReach: reach,
  /** Highest point touched in the jump. */
  touchReach: reach,
  /** Body mass in g, only for the estimate of power. */
  bodyMass: z.optional(mass),
});

export type VerticalParameters = z.infer<typeof parameters>;
export type VerticalAttempt = z.infer<typeof attempt>;

/** Returns the height of a trial in grains: exact, whichever unit each reach was read in. */
export function heightOf(seen: Pick<VerticalAttempt, "standingReach" | "touchReach">): number {
  return grainsOf(seen.touchReach) - grainsOf(seen.standingReach);
}

const centimetres = (count: number) => count * grainsPerCentimetre;

/** True for a plausible body mass: 20 to 300 kg. Ours, no source. */
function isBodyMass(massGrams: number): boolean {
  return massGrams >= 20_000 && massGrams <= 300_000;
}

/**
 * Estimates the peak power in watts of a jump of `height` grains by a body of `massGrams` grams: 60.7 × height
 * (cm) + 45.3 × mass (kg) − 2055. An estimate, never ranked; below zero it is meaningless. Null for an implausible body
 * mass.
 * Source: Sayers et al. 1999, Med Sci Sports Exerc 31(4), 572–577, squat-jump form.
 */
export function peakPower(height: number, massGrams: number): number | null {
  if (!isBodyMass(massGrams)) return null;
  // Whole numbers until the last step, so that no rounding creeps in.
  return (3035 * height + 453 * massGrams - 20_550_000) / 10_000;
}

/** Writes a length for a sentence, in both units. */
function inBoth(grains: number): { readonly cm: string; readonly inches: string } {
  return { cm: formatLength(grains, "cm"), inches: formatLength(grains, "in") };
}

function heightPlausibility(seen: VerticalAttempt): Plausibility {
  const height = heightOf(seen);
  const values = inBoth(height);
  // Of several touches the sentence has to name the one that can't be.
  const touch = inBoth(grainsOf(seen.touchReach));
  return believe(height, {
    refuseBelow: [0, sentence("test.vertical.plausibility.touchBelowReach", touch)],
    askBelow: [centimetres(10), sentence("test.vertical.plausibility.low", values)],
    askAbove: [centimetres(75), sentence("test.vertical.plausibility.high", values)],
    refuseAbove: [centimetres(130), sentence("test.vertical.plausibility.tooHigh", values)],
  });
}

/** Returns the question about an unusual standing reach; null between 120 and 300 cm (ours). */
export function reachQuestion(standingReach: Length): Sentence | null {
  const grains = grainsOf(standingReach);
  if (grains >= centimetres(120) && grains <= centimetres(300)) return null;
  const values = inBoth(grains);
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
 * Vertical leap (power): highest touch − standing reach, best of the trials, exact in cm and in inches.
 * Source: common practice, no published source; ranges ours.
 */
export const vertical: Protocol<"vertical", VerticalParameters, VerticalAttempt> = Object.freeze({
  code: "vertical" as const,
  better: "higher" as const,
  grain: frozen({ unit: "cm" as const, perUnit: grainsPerCentimetre, earlier: 10 }),
  equalWithin: centimetres(0.1),
  variants: frozen([""]),
  parameters,
  defaults: frozen({ trials: 3 }),
  attempt,
  slot: () => "",
  slotSize: ({ trials }: VerticalParameters) => trials,
  score: ({ trials }: VerticalParameters, attempts: readonly VerticalAttempt[]) => ({
    state: "complete" as const,
    value: Math.max(...attempts.map(heightOf)),
    ...(attempts.length < trials && { trials: { done: attempts.length, of: trials } }),
  }),
  plausibility: (_parameters: VerticalParameters, seen: VerticalAttempt) =>
    worse(worse(heightPlausibility(seen), massPlausibility(seen)), reachPlausibility(seen)),
  write: (value: number, lengths: LengthUnit) => ({ number: formatLength(value, lengths), unit: lengths }),
});
