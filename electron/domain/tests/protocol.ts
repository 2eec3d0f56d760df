import type { ZodType } from "zod";
import type { Sentence } from "../words.ts";

/** What a stored mark counts: marks are integers in grains, so that no binary fraction ever decides a best. */
export interface Grain {
  /** The unit in which sheets and people read the mark. */
  readonly unit: "reps" | "landings" | "cm" | "s";
  /** Grains in one unit: 4 quarter landings, 10 mm in a cm; 1 s of a plank, 1000 ms of a circuit. */
  readonly perUnit: number;
}

/** What the standing attempts of one athlete, test and variant amount to. */
export type Mark =
  | { readonly state: "complete"; readonly value: number }
  /** Some of the attempts that a mark needs are not there yet; `missing` names their slots. */
  | { readonly state: "incomplete"; readonly missing: readonly string[] }
  /** Stopped before the end of a timed task: ranks after every finisher and is never a best. */
  | { readonly state: "unfinished"; readonly rounds: number; readonly reps: number };

/** Whether a keyed value can be believed: taken, taken after "sure?", or refused with what to check. */
export type Plausibility =
  | { readonly level: "fine" }
  | { readonly level: "ask"; readonly sentence: Sentence }
  | { readonly level: "refuse"; readonly sentence: Sentence };

/** How lengths are read and written for people; times and counts do not depend on it. */
export type LengthUnit = "cm" | "in";

/** A mark as people see it: the number large, the unit small, and a stage or a count beside it. */
export interface Written {
  readonly number: string;
  readonly unit: "reps" | "landings" | "cm" | "in" | "min:s" | "";
  /** For example the plank's stage, or rounds and reps of an unfinished circuit. */
  readonly note?: Sentence;
}

/** The rules of a test. Everything is pure; `Parameters` are frozen when the day opens. */
export interface Protocol<Code extends string, Parameters, Attempt> {
  readonly code: Code;
  /** Which way is better. */
  readonly better: "higher" | "lower";
  readonly grain: Grain;
  /**
   * Marks no further apart than this (grains) are equal: less than any reading shows. 1 for a height, where quarter
   * inches kept as whole millimetres make one jump 450 or 451 mm, as the reach has it; 0 for everything counted.
   */
  readonly equalWithin: number;
  /** Ways of doing the test whose marks never compare; one empty text where there is only one way. */
  readonly variants: readonly string[];
  readonly parameters: ZodType<Parameters>;
  readonly defaults: Parameters;
  /** What was seen, never what it amounts to. Parsed once, at the door. */
  readonly attempt: ZodType<Attempt>;
  /** Which place an attempt takes: attempts of one slot exclude or compete with each other. */
  slot(attempt: Attempt): string;
  /** How many standing attempts a slot holds; one more is refused, to be corrected instead. */
  slotSize(parameters: Parameters): number;
  /** The mark of the attempts that stand (at least one), in any order. */
  score(parameters: Parameters, attempts: readonly Attempt[]): Mark;
  /** Believes, asks or refuses one attempt by itself (comparison with the athlete's own last is elsewhere). */
  plausibility(parameters: Parameters, attempt: Attempt): Plausibility;
  /** A complete mark's value (grains) as people see it. */
  write(value: number, lengths: LengthUnit): Written;
}
