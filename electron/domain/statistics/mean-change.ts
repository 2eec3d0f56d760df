import { mean, sampleVariance } from "simple-statistics";
import { type Interval, upperShare } from "./interval.ts";
import type { Variance } from "./responses.ts";
import { quantileOfT, shareOfT } from "./student.ts";

/** A mean, or a difference of two, with the interval that holds the true one; in the values' own unit. */
export interface Estimated extends Interval {
  readonly amount: number;
  /** The chance that a truth of nought gives an amount at least as far from it, to either side. */
  readonly byChance: number;
}

/**
 * Returns the mean of some changes with its interval by Student's t of n − 1 degrees of freedom: the paired t test. With a
 * variance in `common` it has more degrees (Satterthwaite 1946, Biometrics Bulletin 2(6), 110–114; from memory).
 * @param common the variance of what is in all of the changes alike, taken as known
 * @throws RangeError with fewer than two changes, which say nothing of how far their mean may be off.
 */
export function meanChange(changes: readonly number[], level = 0.95, common = 0): Estimated {
  const { amount, square, degrees } = meanAndError(changes);
  return estimated(amount, [{ square, degrees }], common, level);
}

/**
 * Returns by how much the mean of some changes lies above that of others, whose spread may be another one: Welch's t.
 * Source: Welch 1947, Biometrika 34(1/2), 28–35 (from memory).
 * @param common the variance of what is in all changes of one side and not of the other, taken as known
 * @throws RangeError with fewer than two changes on a side.
 */
export function differenceOfMeans(
  changes: readonly number[],
  others: readonly number[],
  level = 0.95,
  common = 0,
): Estimated {
  const [own, theirs] = [meanAndError(changes), meanAndError(others)];
  return estimated(own.amount - theirs.amount, [own, theirs], common, level);
}

/** Returns a mean, the square of its standard error, and the degrees of freedom behind that. */
function meanAndError(values: readonly number[]) {
  if (values.length < 2) throw new RangeError("One change has no spread.");
  return {
    amount: mean(values),
    square: sampleVariance(values) / values.length,
    degrees: values.length - 1,
  };
}

/** Degrees of freedom by which t is the normal distribution. */
const asGoodAsKnown = 1e6;

function estimated(amount: number, parts: readonly Variance[], common: number, level: number): Estimated {
  const square = parts.reduce((sum, part) => sum + part.square, common);
  // All changes alike: nothing is left that the mean could be off by.
  if (square === 0) return { amount, low: amount, high: amount, byChance: amount === 0 ? 1 : 0 };
  const unsure = parts.reduce((sum, part) => sum + part.square ** 2 / part.degrees, 0);
  const [error, degrees] = [Math.sqrt(square), Math.min(square ** 2 / unsure, asGoodAsKnown)];
  const reach = quantileOfT(upperShare(level), degrees) * error;
  const byChance = 2 * shareOfT(-Math.abs(amount) / error, degrees);
  return { amount, low: amount - reach, high: amount + reach, byChance };
}
