import { mean } from "simple-statistics";
import { upperShare } from "../statistics/interval.ts";
import { normalQuantile } from "../statistics/normal.ts";
import { quantileOfT } from "../statistics/student.ts";
import { type MeanDifference, meanDifference } from "./difference.ts";
import type { Estimated, Table } from "./shape.ts";

/** One athlete in the picture of two series: the mean of both readings, and the first less the second. In grains. */
interface PairPoint {
  readonly mean: number;
  readonly difference: number;
}

/** How far two series agree; `first` and `second` are columns from 0. In grains. */
export interface PairOfSeries {
  readonly first: number;
  readonly second: number;
  readonly points: readonly PairPoint[];
  readonly bias: MeanDifference;
  /** Limits of agreement: 95 of 100 differences lie between them. */
  readonly lower: Estimated;
  readonly upper: Estimated;
}

/** Returns the agreement of each pair of series. */
export function pairsOf(table: Table): PairOfSeries[] {
  const columns = (table[0] ?? []).map((_, at) => at);
  return columns.flatMap((first) =>
    columns.filter((second) => second > first).map((second) => pairOf(table, first, second)),
  );
}

/**
 * Compares two columns. The limits are mean ± 1.96 SD of the differences, and the variance of each is
 * SD² (1/n + 1.96² / 2(n − 1)), taken with t.
 * Source: Bland & Altman 1986, Lancet 327(8476), 307–310, and 1999, Statistical Methods in Medical Research 8, 135–160.
 */
function pairOf(table: Table, first: number, second: number): PairOfSeries {
  const points = table.map((row) => {
    const [one, other] = [row[first] ?? 0, row[second] ?? 0];
    return { mean: mean([one, other]), difference: one - other };
  });
  const bias = meanDifference(points.map(({ difference }) => difference));
  const reach = normalQuantile(upperShare(0.95));
  const half = halfOfLimit(bias.spread, points.length, reach);
  const limit = (value: number) => ({ value, low: value - half, high: value + half });
  const [lower, upper] = [limit(bias.value - reach * bias.spread), limit(bias.value + reach * bias.spread)];
  return { first, second, points, bias, lower, upper };
}

function halfOfLimit(spread: number, count: number, reach: number): number {
  const error = spread * Math.sqrt(1 / count + reach ** 2 / (2 * (count - 1)));
  return quantileOfT(upperShare(0.95), count - 1) * error;
}
