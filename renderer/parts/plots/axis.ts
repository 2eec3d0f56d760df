import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { definitionOf, type TestCode } from "../../../electron/domain/tests/registry.ts";

/** Returns at most `most` round values from `low` to `high`, all in grains; inches are rarely whole millimetres. */
export function valueTicks(
  test: TestCode,
  low: number,
  high: number,
  most: number,
  lengths: LengthUnit,
): number[] {
  const candidates = definitionOf(test).figures.axisSteps(lengths);
  const step = candidates.find((each) => countOf(low, high, each) <= most) ?? (high - low) / most;
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.max(0, countOf(low, high, step)) }, (_, index) => (first + index) * step);
}

/** Counts the multiples of `step` from `low` to `high`. */
function countOf(low: number, high: number, step: number): number {
  return Math.floor(high / step) - Math.ceil(low / step) + 1;
}

/** Formats a tick's value for the axis: no unit, and times without tenths. */
export function writeTick(test: TestCode, value: number, lengths: LengthUnit): string {
  const { figures, protocol } = definitionOf(test);
  return figures.writeTick?.(value) ?? protocol.write(value, lengths).number;
}

/** Returns the range of the values with some margin, so that no mark is on the edge. */
export function valueRange(values: readonly number[]): { readonly low: number; readonly high: number } {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = high > low ? (high - low) * 0.12 : Math.max(1, Math.abs(high) * 0.12);
  return { low: low - room, high: high + room };
}
