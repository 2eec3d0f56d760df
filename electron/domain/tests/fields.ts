import type { Sentence } from "../words.ts";
import type { LengthUnit } from "./protocol.ts";
import type { Reading, Typed } from "./reading.ts";

/** A text field of a test. */
export interface Field {
  /** The part of the attempt that it holds, if it holds just one. */
  readonly name: string;
  /** Its label is `field.<label>` in the test's words; its name if left out. */
  readonly label?: string;
  readonly digits: "whole" | "fraction" | "time";
  /** length and mass follow the unit of the desk. */
  readonly unit?: "length" | "mass";
  /** Enter skips it. */
  readonly aside?: true;
  /** Enter saves when it is empty: for an athlete who jumped only twice. */
  readonly mayEnd?: true;
}

/** A choice of two beside the fields; `keys` choose while the fields have the focus. */
export interface Choosing {
  readonly name: string;
  readonly options: readonly [string, string];
  readonly keys: readonly [string, string] | null;
}

/** The text that would be typed for an attempt, and the unit of its lengths. */
export interface Retyped {
  readonly typed: Typed;
  readonly lengths: LengthUnit;
}

/** The errors by field name. */
export type FieldErrors = Readonly<Record<string, Sentence>>;

/** An athlete's standing attempts of a test today, in the order of entry, and their last variant. */
export interface EnteredToday<Attempt> {
  readonly seen: readonly Attempt[];
  readonly variant: string;
}

/** A test's entry from paper. */
export interface KeyedTest<Attempt> {
  readonly choice: Choosing | null;
  /** Returns the fields in Enter's order. `room`: how many more attempts fit. */
  fields(typed: Typed, room: number): readonly Field[];
  /** Returns the fields' starting text. */
  start(standing: EnteredToday<Attempt>, lengths: LengthUnit): Typed;
  /** Returns the slot of the fields' attempt; left out where there is only one. */
  slot?(typed: Typed): string;
  /** Reads the fields. The protocol judges whether the attempts are believable. */
  read(reading: Reading, lengths: LengthUnit): Attempt[];
  /** Limits of single fields, said in words that fit the field and the day. `parameters`: of the day, as stored. */
  limits?(reading: Reading, parameters: unknown): FieldErrors;
  /** Returns the fields' texts to correct an attempt: reading them again gives the same attempt. */
  retype(seen: Attempt, lengths: LengthUnit): Retyped;
}
