import { quartiles } from "../statistics/quantile.ts";

/** How a set of values lies, in their own unit. */
export interface Spread {
  readonly count: number;
  readonly median: number;
  /** The middle half lies between these; null of fewer than {@link leastForHalf}. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly lowest: number;
  readonly highest: number;
}

/** Of fewer values the middle half says nothing that the values themselves don't (ours, no source). */
const leastForHalf = 4;

/** Median, quartiles (type 7 of Hyndman & Fan 1996, as everywhere here) and range; null of no values. */
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
