import type { TypicalError } from "../../domain/statistics/change.ts";
import type { Variations } from "../../domain/statistics/variation.ts";
import { ofEachTest, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { noiseOf } from "./known.ts";

export type TypicalErrors = Readonly<Record<TestCode, TypicalError>>;

/**
 * Returns how each test's marks vary, from this store. The marks of a day are judged by those of all other days: a slip
 * must not widen what passes for noise, and a verdict that a station tells is still the same on the card.
 */
export function variationsOf(db: ReadableDb, exceptDayId: number): Variations {
  return noiseOf(db, exceptDayId);
}

/** Returns each test's typical error alone. */
export function typicalErrorsOf(db: ReadableDb, exceptDayId: number): TypicalErrors {
  const noise = noiseOf(db, exceptDayId);
  return ofEachTest((test) => noise[test].error);
}
