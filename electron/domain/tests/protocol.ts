import type { ZodMiniType } from "zod/mini";
import type { Sentence } from "../words.ts";

/** The unit of stored marks: they are integers in grains, so that no binary fraction ever decides a best. */
export interface Grain {
  /** The unit on sheets and screens. */
  readonly unit: "reps" | "landings" | "cm" | "s";
  /** Grains in one unit: 4 quarter landings, 200 twentieths of a mm in a cm; 1 s of a plank, 1000 ms of a circuit. */
  readonly perUnit: number;
  /** Grains in one unit under the rules before, where they were others; bundles of those are still read. */
  readonly earlier?: number;
}

/** The mark of one athlete's standing attempts of a test and variant. */
export type Mark =
  | {
      readonly state: "complete";
      readonly value: number;
      /** The trials that it is the best of, where the rules allow more. */
      readonly trials?: { readonly done: number; readonly of: number };
    }
  /** Some attempts that the mark needs are still missing; `missing` names their slots. */
  | { readonly state: "incomplete"; readonly missing: readonly string[] }
  /** Stopped before the end of a timed task: ranks after every finisher and is never a best. */
  | { readonly state: "unfinished"; readonly rounds: number; readonly reps: number };

/** The mark of somebody who stopped before the end. */
export type Unfinished = Extract<Mark, { state: "unfinished" }>;

/** The judgement of an entered value: accepted, accepted after "sure?", or refused with a hint what to check. */
export type Plausibility =
  | { readonly level: "fine" }
  | { readonly level: "ask"; readonly sentence: Sentence }
  | { readonly level: "refuse"; readonly sentence: Sentence };

/** The unit for reading and writing lengths; times and counts do not depend on it. */
export type LengthUnit = "cm" | "in";

/** A mark as displayed: the number large, the unit small, and a stage or a count beside it. */
export interface Written {
  readonly number: string;
  readonly unit: "reps" | "landings" | "cm" | "in" | "min:s" | "";
  /** For example the plank's stage, or rounds and reps of an unfinished circuit. */
  readonly note?: Sentence;
}

/** The rules of a test, all pure; `Parameters` are frozen when the day opens. */
export interface Protocol<Code extends string, Parameters, Attempt> {
  readonly code: Code;
  /** The better direction. */
  readonly better: "higher" | "lower";
  readonly grain: Grain;
  /**
   * Marks no further apart than this (grains) are equal: less than any reading shows. 1 mm for a height, which one tape
   * never shows and a tape in centimetres against one in inches does; 0 for everything counted.
   */
  readonly equalWithin: number;
  /** Variants of the test, whose marks never compare; one empty text where there is only one. */
  readonly variants: readonly string[];
  readonly parameters: ZodMiniType<Parameters>;
  readonly defaults: Parameters;
  /** Schema of what was seen, never of its score. Parsed once, in the API. */
  readonly attempt: ZodMiniType<Attempt>;
  /** Returns an attempt's slot: attempts of one slot exclude or compete with each other. */
  slot(attempt: Attempt): string;
  /** Returns how many standing attempts a slot holds; one more is refused and has to be a correction. */
  slotSize(parameters: Parameters): number;
  /** Scores the standing attempts (at least one), in any order. */
  score(parameters: Parameters, attempts: readonly Attempt[]): Mark;
  /** Judges one attempt by itself (the comparison with the athlete's own last is elsewhere). */
  plausibility(parameters: Parameters, attempt: Attempt): Plausibility;
  /** Formats a complete mark's value (grains) for people. */
  write(value: number, lengths: LengthUnit): Written;
}
