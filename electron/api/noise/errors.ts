import type { TypicalError } from "../../domain/statistics/change.ts";
import { ofEachTest, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { noiseOf } from "./known.ts";

export type TypicalErrors = Readonly<Record<TestCode, TypicalError>>;

/**
 * The typical error of each test as this store knows it: what every change is judged by. Without the marks of one day
 * (0: with all) for whether that day's marks are believed, since a slip must not widen what passes for noise.
 */
export function typicalErrorsOf(db: ReadableDb, exceptDayId = 0): TypicalErrors {
  const noise = noiseOf(db, exceptDayId);
  return ofEachTest((test) => noise[test].error);
}
