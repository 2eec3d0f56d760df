import type { MarkBounds } from "../privacy/coding.ts";
import { endsOf, leastToCompare, type PlaceBand, wilsonInterval } from "./place.ts";
import { widthOfPlace } from "./place-between.ts";

/** A percentile of a group of marks, of which only bounds are told (grains). */
interface ToldPercentile extends MarkBounds {
  /** From 5 to 95. */
  readonly percentile: number;
}

/** A group of marks as a reference table tells it. */
export interface GroupInPercentiles {
  readonly marks: number;
  /** The number of independent marks that would say as much. */
  readonly countsAs: number;
  /** In rising order. */
  readonly percentiles: readonly ToldPercentile[];
}

/** Shares of a group, from 0 to 1. */
interface Shares {
  /** The share that is surely worse than the worst mark that the athlete may well have shown. */
  readonly atLeast: number;
  /** The share beyond which nobody can be worse than the best one. */
  readonly atMost: number;
}

/**
 * Returns the place of an athlete in a group of which percentiles alone are known: from what is surely worse than the
 * worst mark that they may well have shown (`reach` away) to what may be worse than the best, each end with Wilson's
 * interval on top, of as many marks as the group counts for, in whole numbers rounded outwards. All values are grains,
 * and marks no further apart than `equalWithin` are equal. Null with fewer than twenty marks.
 */
export function placeInPercentiles(
  better: "higher" | "lower",
  value: number,
  { marks, countsAs, percentiles }: GroupInPercentiles,
  equalWithin = 0,
  reach = 0,
): PlaceBand | null {
  if (marks < leastToCompare) return null;
  const [worst, best] = endsOf(better, value, reach);
  const shares = better === "higher" ? ofHigher : ofLower;
  const { atLeast, atMost } = shares(percentiles, worst, best, equalWithin);
  const { low } = wilsonInterval(atLeast * countsAs, countsAs);
  const { high } = wilsonInterval(atMost * countsAs, countsAs);
  return { n: marks, low: Math.floor(low * 100), high: Math.ceil(high * 100) };
}

/** A percentile lies below its upper bound and not below its lower one; where one is missing, it may lie anywhere there. */
function ofHigher(
  percentiles: readonly ToldPercentile[],
  worst: number,
  best: number,
  equalWithin: number,
): Shares {
  const below = percentiles.findLast(({ high }) => (high ?? Infinity) <= worst - equalWithin);
  const above = percentiles.find(({ low }) => (low ?? -Infinity) > best + equalWithin);
  return { atLeast: (below?.percentile ?? 0) / 100, atMost: (above?.percentile ?? 100) / 100 };
}

/** The mirror image: worse is above, so that shares count from the other end. */
function ofLower(
  percentiles: readonly ToldPercentile[],
  worst: number,
  best: number,
  equalWithin: number,
): Shares {
  const above = percentiles.find(({ low }) => (low ?? -Infinity) > worst + equalWithin);
  const below = percentiles.findLast(({ high }) => (high ?? Infinity) <= best - equalWithin);
  return { atLeast: 1 - (above?.percentile ?? 100) / 100, atMost: 1 - (below?.percentile ?? 0) / 100 };
}

/**
 * Returns how wide a band a mark in the middle of such a group can get, for a choice between groups: the effect of chance,
 * plus the largest share that the percentiles leave open for any mark (`widthOfPlace`).
 */
export function widthInPercentiles({ countsAs, percentiles }: Omit<GroupInPercentiles, "marks">): number {
  const bounds = percentiles.flatMap(({ low, high }) => [low, high]).filter((bound) => bound !== null);
  // What is left open changes at a bound, and nowhere between two.
  const open = bounds.map((at) => {
    const [before, from] = [at - 1, at].map((mark) => ofHigher(percentiles, mark, mark, 0));
    return Math.max(leftBy(before), leftBy(from));
  });
  return widthOfPlace(countsAs, Math.max(0, ...open));
}

function leftBy(shares: Shares | undefined): number {
  return shares === undefined ? 0 : shares.atMost - shares.atLeast;
}
