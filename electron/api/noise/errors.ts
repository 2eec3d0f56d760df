import type { TypicalError } from "../../domain/statistics/change.ts";
import { ofEachTest, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { noiseOf } from "./known.ts";

export type TypicalErrors = Readonly<Record<TestCode, TypicalError>>;

/**
 * Returns each test's typical error from this store, which judges every change. Leaves out the marks of one day (0:
 * none) for judging that day's marks, since a slip must not widen what passes for noise.
 */
export function typicalErrorsOf(db: ReadableDb, exceptDayId = 0): TypicalErrors {
  const noise = noiseOf(db, exceptDayId);
  return ofEachTest((test) => noise[test].error);
}
