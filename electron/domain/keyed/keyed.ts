import type { Choosing, EnteredToday, Field, FieldErrors, Retyped } from "../tests/fields.ts";
import type { LengthUnit } from "../tests/protocol.ts";
import { type Reading, readingOf, type Typed } from "../tests/reading.ts";
import { definitionOf, protocolOf, type TestCode } from "../tests/registry.ts";

/** What was typed, as attempts of the test, or what is wrong with which field. */
export type Keyed = { readonly seen: readonly unknown[] } | { readonly errors: FieldErrors };

/** Reads the fields of a test. Whether the attempts can be believed is the protocol's to say. */
export function readKeyed(test: TestCode, typed: Typed, lengths: LengthUnit): Keyed {
  const { keyed } = definitionOf(test);
  const reading: Reading = readingOf(typed);
  const seen = keyed.read(reading, lengths);
  const errors = { ...keyed.limits?.(reading), ...reading.errors };
  return Object.keys(errors).length > 0 ? { errors } : { seen };
}

/** What to put into the fields to correct an attempt: reading it again gives the same attempt. */
export function retype(test: TestCode, seen: unknown, lengths: LengthUnit): Retyped {
  return definitionOf(test).keyed.retype(protocolOf(test).attempt.parse(seen), lengths);
}

/** The fields of a test, in the order in which Enter goes through them. `room`: how many more attempts fit. */
export function fieldsOf(test: TestCode, typed: Typed, room: number): readonly Field[] {
  return definitionOf(test).keyed.fields(typed, room);
}

/** Whether a test is keyed in lengths, so that their unit is to be chosen. */
export function measuresLengths(test: TestCode): boolean {
  return fieldsOf(test, {}, 1).some(({ unit }) => unit === "length");
}

/** What is chosen beside the fields of a test. */
export function choiceOf(test: TestCode): Choosing | null {
  return definitionOf(test).keyed.choice;
}

/** An attempt that stands today. */
export interface StandingAttempt {
  readonly variant: string;
  readonly seen?: unknown;
}

/** How many more attempts fit for what is chosen now. */
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

/** What the fields start with: how the athlete did it last, the direction that is missing, the reach of today. */
export function startOf(
  test: TestCode,
  { seen, variant }: EnteredToday<unknown>,
  lengths: LengthUnit,
): Typed {
  const { keyed, protocol } = definitionOf(test);
  return keyed.start({ seen: seen.map((each) => protocol.attempt.parse(each)), variant }, lengths);
}
