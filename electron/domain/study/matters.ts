import { mean } from "simple-statistics";
import { type TypicalError, typicalError } from "../statistics/change.ts";
import type { LengthUnit } from "../tests/protocol.ts";
import { definitionOf, type TestCode } from "../tests/registry.ts";
import { type StudyRow, wholeRows } from "./shape.ts";

/** Returns the least bias worth a word at the mean of the readings, in grains; half of what a mark varies by, in whole readings. */
export function biasThatMattersAmong(
  test: TestCode,
  rows: readonly StudyRow[],
  error: TypicalError,
  lengths: LengthUnit,
): number {
  const all = wholeRows(rows).flat();
  const mark = all.length === 0 ? definitionOf(test).figures.middling : mean(all);
  return biasThatMatters(test, mark, error, lengths);
}

/**
 * Returns the least bias worth a word: half of what a mark varies by anyway, in whole readings, and at least one. A
 * smaller one changes what is said of hardly anybody. Ours, no source.
 * @param mark the mark at which it is asked, in grains
 */
function biasThatMatters(test: TestCode, mark: number, error: TypicalError, lengths: LengthUnit): number {
  const reading = definitionOf(test).figures.reading(lengths);
  const half = typicalError(test, mark, error) / 2;
  return Math.max(1, Math.round(half / reading)) * reading;
}
