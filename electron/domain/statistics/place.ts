import type { Interval } from "./interval.ts";
import { inOrder, type MarksInOrder } from "./marks-in-order.ts";
import { normalQuantile } from "./normal.ts";

/** Fewest marks to compare with: with fewer, one more mark would move the answer by more than five in a hundred. */
export const leastToCompare = 20;

/** A share of a hundred marks that this one beats, from `low` to `high`, in whole numbers from 0 to 100. */
export interface PlaceBand {
  /** Number of marks it was compared with. */
  readonly n: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Returns the percentile rank of a mark by mid-rank: (worse + ½ equal) / n × 100, so that a mark better than all others
 * is at 100 whichever way the test counts. Source: the definition of the percentile rank; statistics libraries call it
 * the mean of the strict and the weak one. `equalWithin` and all values are grains. Marks come in any order, or put in
 * order once.
 * @throws RangeError when there is nothing to compare with.
 */
export function percentileRank(
  better: "higher" | "lower",
  value: number,
  marks: readonly number[] | MarksInOrder,
  equalWithin = 0,
): number {
  const { n, below, upTo } = "below" in marks ? marks : inOrder(marks);
  if (n === 0) throw new RangeError("A percentile rank needs at least one mark.");
  const [lower, notHigher] = [below(value - equalWithin), upTo(value + equalWithin)];
  const worse = better === "higher" ? lower : n - notHigher;
  return ((worse + (notHigher - lower) / 2) / n) * 100;
}

/**
 * Returns Wilson's score interval of `count` in `n` (half counts are allowed), which covers the true share 95 times in
 * 100. Source: Wilson 1927, Journal of the American Statistical Association 22; checked by Newcombe 1998.
 * @throws RangeError when `n` is not above zero or `count` is not from 0 to `n`.
 */
export function wilsonInterval(count: number, n: number): Interval {
  if (!(n > 0 && count >= 0 && count <= n))
    throw new RangeError("A share needs a count from 0 to n, and n > 0.");
  const z = normalQuantile(0.975);
  const share = count / n;
  const middle = share + (z * z) / (2 * n);
  const reach = z * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n));
  const scale = 1 + (z * z) / n;
  // Rounding may lead slightly beyond the ends.
  return { low: Math.max(0, (middle - reach) / scale), high: Math.min(1, (middle + reach) / scale) };
}

/**
 * Returns the worst and the best mark that an athlete may well have shown instead of `value`: 95 times in 100 the truth
 * lies between them. `reach` is how far, in grains.
 */
export function endsOf(
  better: "higher" | "lower",
  value: number,
  reach: number,
): [worst: number, best: number] {
  return better === "higher" ? [value - reach, value + reach] : [value + reach, value - reach];
}

/**
 * Returns the place of an athlete among others' marks: from the rank of the worst mark that they may well have shown to
 * that of the best, each end with Wilson's interval on top, as whole numbers rounded outwards; null with fewer than
 * twenty. Without `reach` it is the place of the mark alone, which seldom is the athlete's. Excludes own marks.
 */
export function placeAmong(
  better: "higher" | "lower",
  value: number,
  others: readonly number[] | MarksInOrder,
  equalWithin = 0,
  reach = 0,
): PlaceBand | null {
  const marks = "below" in others ? others : inOrder(others);
  const { n } = marks;
  if (n < leastToCompare) return null;
  const [least, most] = endsOf(better, value, reach).map((mark) => {
    const rank = percentileRank(better, mark, marks, equalWithin);
    return wilsonInterval((rank / 100) * n, n);
  });
  if (least === undefined || most === undefined) return null;
  return { n, low: Math.floor(least.low * 100), high: Math.ceil(most.high * 100) };
}
