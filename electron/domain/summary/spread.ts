import { quartiles } from "../statistics/quantile.ts";

/** The distribution of a set of values, in their own unit. */
export interface Spread {
  readonly count: number;
  readonly median: number;
  /** Bounds of the middle half; null for fewer than {@link leastForHalf} values. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly lowest: number;
  readonly highest: number;
}

/** Fewest values for a middle half; with fewer it says no more than the values themselves (ours, no source). */
const leastForHalf = 4;

/** Returns median, quartiles (type 7 of Hyndman & Fan 1996, as everywhere here) and range; null without values. */
export function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const { lower, median, upper } = quartiles(values);
  const enough = values.length >= leastForHalf;
  return {
    count: values.length,
    median,
    lower: enough ? lower : null,
    upper: enough ? upper : null,
    lowest: Math.min(...values),
    highest: Math.max(...values),
  };
}
