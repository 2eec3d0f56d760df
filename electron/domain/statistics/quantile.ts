/**
 * Returns the value below which the share `p` of `values` lies: type 7 of Hyndman & Fan 1996 (The American Statistician
 * 50(4)), linear between neighbours on n − 1 steps. Values in any order and any unit; the answer is in the same unit.
 * @throws RangeError when there are no values or `p` is not from 0 to 1.
 */
export function quantile(values: readonly number[], p: number): number {
  if (values.length === 0) throw new RangeError("A quantile needs at least one value.");
  if (!(p >= 0 && p <= 1)) throw new RangeError("The share of a quantile is from 0 to 1.");
  const sorted = Float64Array.from(values).sort();
  const place = (sorted.length - 1) * p;
  const below = Math.floor(place);
  const lower = sorted[below] ?? Number.NaN;
  const upper = sorted[below + 1] ?? lower;
  return lower + (place - below) * (upper - lower);
}

/** The three values that divide a set into quarters. */
export interface Quartiles {
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
}

/** Returns the quartiles of at least one value, type 7 like {@link quantile}. */
export function quartiles(values: readonly number[]): Quartiles {
  return { lower: quantile(values, 0.25), median: quantile(values, 0.5), upper: quantile(values, 0.75) };
}
