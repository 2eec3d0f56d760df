import type { MarkBounds } from "../privacy/coding.ts";
import { endsOf, leastToCompare, type PlaceBand, wilsonInterval } from "./place.ts";

/** Marks with the same bounds (grains): their count and the bounds. */
export interface AlikeInterval extends MarkBounds {
  readonly count: number;
}

/** Counts of other marks against one: surely worse, surely equal, and undecided by their bounds. */
export interface AmongOthers {
  readonly n: number;
  readonly worse: number;
  readonly equal: number;
  readonly unsure: number;
}

/**
 * Counts the others by how they compare with `value`; all are grains, and marks no further apart than `equalWithin` are
 * equal. A mark lies at or above its lower bound and below its upper bound; a missing bound is open.
 */
export function standingAmong(
  better: "higher" | "lower",
  value: number,
  others: readonly AlikeInterval[],
  equalWithin = 0,
): AmongOthers {
  let [n, worse, equal, unsure] = [0, 0, 0, 0];
  for (const { low, high, count } of others) {
    const least = low ?? -Infinity;
    const most = high === null ? Infinity : high - 1;
    const isBelow = most < value - equalWithin;
    const isAbove = least > value + equalWithin;
    n += count;
    if (better === "higher" ? isBelow : isAbove) worse += count;
    else if (isBelow || isAbove) continue;
    else if (least >= value - equalWithin && most <= value + equalWithin) equal += count;
    else unsure += count;
  }
  return { n, worse, equal, unsure };
}

/**
 * Returns the place of an athlete among marks reported as intervals: from the worst mark that they may well have shown
 * (`reach` away) with "all undecided ones are better" to the best with "all of them are worse", each end with Wilson's interval on top, in whole numbers rounded outwards. The mid-rank lies inside. With
 * intervals of one grain it equals `placeAmong`. Null with fewer than twenty marks.
 */
export function placeBetween(
  better: "higher" | "lower",
  value: number,
  others: readonly AlikeInterval[],
  equalWithin = 0,
  reach = 0,
): PlaceBand | null {
  const [worst, best] = endsOf(better, value, reach);
  const least = standingAmong(better, worst, others, equalWithin);
  if (least.n < leastToCompare) return null;
  const most = standingAmong(better, best, others, equalWithin);
  const { low } = wilsonInterval(least.worse + least.equal / 2, least.n);
  const { high } = wilsonInterval(most.worse + most.unsure + most.equal / 2, most.n);
  return { n: least.n, low: Math.floor(low * 100), high: Math.ceil(high * 100) };
}

/**
 * Returns the most that a group's bounds can leave open for any mark: the largest share of its marks whose intervals
 * overlap at one point. 0 where all intervals are one grain wide.
 */
export function leftOpen(marks: readonly AlikeInterval[]): number {
  const ends = marks
    .filter(({ low, high }) => low === null || high === null || high - low > 1)
    .flatMap(({ low, high, count }): [at: number, step: number][] => [
      [low ?? -Infinity, count],
      [high ?? Infinity, -count],
    ])
    // An interval excludes its upper bound: at one point, intervals end before others begin.
    .sort(([a, stepA], [b, stepB]) => (a === b ? stepA - stepB : a - b));
  let [open, most] = [0, 0];
  for (const [, step] of ends) {
    open += step;
    most = Math.max(most, open);
  }
  const n = marks.reduce((sum, { count }) => sum + count, 0);
  return n === 0 ? 0 : most / n;
}

/**
 * Returns how wide a band a mark in the middle of such a group can get: the effect of chance with `n` marks, plus the
 * share the bounds leave open. Of several groups the one with the narrowest is most informative for any mark; of exact
 * marks that is simply the largest group.
 */
export function widthOfPlace(n: number, open: number): number {
  const { low, high } = wilsonInterval(n / 2, n);
  return high - low + open;
}
