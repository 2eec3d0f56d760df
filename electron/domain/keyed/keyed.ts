import type { Choosing, EnteredToday, Field, FieldErrors, Retyped } from "../tests/fields.ts";
import type { LengthUnit } from "../tests/protocol.ts";
import { type Reading, readingOf, type Typed } from "../tests/reading.ts";
import { definitionOf, protocolOf, type TestCode } from "../tests/registry.ts";
import type { EitherTime } from "../units.ts";

/** A time in a field that can be read in two ways. */
export interface EitherField extends EitherTime {
  readonly field: string;
}

/** The typed text as attempts of the test, the errors by field, or a time that has to be asked about first. */
export type Keyed =
  | { readonly seen: readonly unknown[] }
  | { readonly errors: FieldErrors }
  | { readonly either: EitherField };

/** Reads the fields of a test by the day's `parameters`. Whether the attempts can be believed is the protocol's to say. */
export function readKeyed(test: TestCode, parameters: unknown, typed: Typed, lengths: LengthUnit): Keyed {
  const { keyed } = definitionOf(test);
  const reading: Reading = readingOf(typed);
  const seen = keyed.read(reading, lengths);
  const errors = { ...keyed.limits?.(reading, parameters), ...reading.errors };
  if (Object.keys(errors).length > 0) return { errors };
  const [either] = Object.entries(reading.eithers);
  return either === undefined ? { seen } : { either: { field: either[0], ...either[1] } };
}

/** Returns the text that fills the fields to correct an attempt; reading it again gives the same attempt. */
export function retype(test: TestCode, seen: unknown, lengths: LengthUnit): Retyped {
  return definitionOf(test).keyed.retype(protocolOf(test).attempt.parse(seen), lengths);
}

/** Returns the fields of a test, in Enter's order. `room`: how many more attempts fit. */
export function fieldsOf(test: TestCode, typed: Typed, room: number): readonly Field[] {
  return definitionOf(test).keyed.fields(typed, room);
}

/** True if a test is entered in lengths, so that their unit has to be chosen. */
export function measuresLengths(test: TestCode): boolean {
  return fieldsOf(test, {}, 1).some(({ unit }) => unit === "length");
}

/** Returns the choice beside the fields of a test; null when there is none. */
export function choiceOf(test: TestCode): Choosing | null {
  return definitionOf(test).keyed.choice;
}

/** An attempt that stands today. */
export interface StandingAttempt {
  readonly variant: string;
  readonly seen?: unknown;
}

/** Counts the attempts that still fit for the current choice. */
export function roomFor(
  test: TestCode,
  parameters: unknown,
  standing: readonly StandingAttempt[],
  typed: Typed,
): number {
  const { keyed, protocol } = definitionOf(test);
  const slot = keyed.slot?.(typed) ?? "";
  const variant = typed.variant ?? "";
  const there = standing.filter(
    (each) => each.variant === variant && protocol.slot(protocol.attempt.parse(each.seen)) === slot,
  );
  return protocol.slotSize(parameters) - there.length;
}

/** Returns the fields' starting text: the last variant, the missing direction, today's reach. */
export function startOf(
  test: TestCode,
  { seen, variant }: EnteredToday<unknown>,
  lengths: LengthUnit,
): Typed {
  const { keyed, protocol } = definitionOf(test);
  return keyed.start({ seen: seen.map((each) => protocol.attempt.parse(each)), variant }, lengths);
}
