import { quantile } from "../statistics/quantile.ts";

/** The shift of one group of values above another, in their own unit. */
export interface Shift {
  /** Hodges-Lehmann: the median of all differences between a value of one group and a value of the other. */
  readonly amount: number;
  /** The interval that holds the true shift with at least `confidence`. */
  readonly low: number;
  readonly high: number;
}

/**
 * Returns the shift of `values` above `others`, with a distribution-free interval: the exact rank-sum distribution
 * decides where the sorted differences are cut. With ties, which whole reps have, the interval errs to the wide side.
 * Null where there are too few values for any interval of that confidence.
 * Source: Hodges & Lehmann 1963, Annals of Mathematical Statistics 34; Hollander & Wolfe 1973, Nonparametric
 * Statistical Methods, section 4.3 (from memory).
 */
export function shiftOf(
  values: readonly number[],
  others: readonly number[],
  confidence: number,
): Shift | null {
  const cut = cutOff(values.length, others.length, (1 - confidence) / 2);
  if (cut === 0) return null;
  const differences = values.flatMap((value) => others.map((other) => value - other)).sort((a, b) => a - b);
  const low = differences[cut - 1];
  const high = differences[differences.length - cut];
  if (low === undefined || high === undefined) return null;
  return { amount: quantile(differences, 0.5), low, high };
}

/** Counts the differences outside at either end: the most with P(U < cut) ≤ tail; 0 where none may be. */
function cutOff(n: number, m: number, tail: number): number {
  let below = 0;
  const chances = rankSumChances(n, m);
  const cut = chances.findIndex((chance) => {
    below += chance;
    return below > tail;
  });
  return Math.max(cut, 0);
}

/**
 * Returns P(U = u) for u from 0 to n·m, where U counts the pairs in which the first group's value is the larger one and
 * only chance decides. The numbers of arrangements are the coefficients of the Gaussian binomial, in whole numbers of
 * any length, so that nothing is rounded before the end.
 * Source: Mann & Whitney 1947, Annals of Mathematical Statistics 18 (from memory).
 */
export function rankSumChances(n: number, m: number): number[] {
  const [few, many] = n < m ? [n, m] : [m, n];
  const size = n * m + 1;
  const ways: bigint[] = Array.from({ length: size }, (_, index) => (index === 0 ? 1n : 0n));
  for (let i = 1; i <= few; i += 1) {
    // Times 1 − q^(many + i), then divided by 1 − q^i.
    for (let u = size - 1; u >= many + i; u -= 1) ways[u] = at(ways, u) - at(ways, u - many - i);
    for (let u = i; u < size; u += 1) ways[u] = at(ways, u) + at(ways, u - i);
  }
  const all = ways.reduce((sum, count) => sum + count, 0n);
  return ways.map((count) => Number((count * finest) / all) / Number(finest));
}

/** Parts of a share: finer than a number can resolve beside the sum of all. */
const finest = 10n ** 18n;

function at(ways: readonly bigint[], index: number): bigint {
  return ways[index] ?? 0n;
}
