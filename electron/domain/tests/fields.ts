import type { Sentence } from "../words.ts";
import type { LengthUnit } from "./protocol.ts";
import type { Reading, Typed } from "./reading.ts";

/** A field that is typed into. */
export interface Field {
  /** The part of the attempt that it holds, wherever one field is one part. Its label is `field.<name>` in the test's words. */
  readonly name: string;
  readonly digits: "whole" | "fraction" | "time";
  /** length and mass follow the unit of the desk. */
  readonly unit?: "length" | "mass";
  /** Enter passes it by. */
  readonly aside?: true;
  /** Enter in it while it is empty saves: whoever jumped twice is done. */
  readonly mayEnd?: true;
}

/** One of two that is chosen beside the fields; `keys` choose while the fields have the focus. */
export interface Choosing {
  readonly name: string;
  readonly options: readonly [string, string];
  readonly keys: readonly [string, string] | null;
}

/** An attempt as the text that would be typed for it, and the unit of its lengths. */
export interface Retyped {
  readonly typed: Typed;
  readonly lengths: LengthUnit;
}

/** What is wrong with which field, by its name. */
export type FieldErrors = Readonly<Record<string, Sentence>>;

/** What stands of an athlete's test today, in the order of entry, and how they did it last. */
export interface EnteredToday<Attempt> {
  readonly seen: readonly Attempt[];
  readonly variant: string;
}

/** How a test is keyed from paper. */
export interface KeyedTest<Attempt> {
  readonly choice: Choosing | null;
  /** The fields in the order in which Enter goes through them. `room`: how many more attempts fit. */
  fields(typed: Typed, room: number): readonly Field[];
  /** What the fields start with. */
  start(standing: EnteredToday<Attempt>, lengths: LengthUnit): Typed;
  /** The slot of what is being keyed; left out where there is only one. */
  slot?(typed: Typed): string;
  /** Reads the fields. Whether the attempts can be believed is the protocol's to say. */
  read(reading: Reading, lengths: LengthUnit): Attempt[];
  /** Limits of single fields that the attempt's schema has too, said here in words that fit the field. */
  limits?(reading: Reading): FieldErrors;
  /** What to put into the fields to correct an attempt: reading it again gives the same attempt. */
  retype(seen: Attempt, lengths: LengthUnit): Retyped;
}
