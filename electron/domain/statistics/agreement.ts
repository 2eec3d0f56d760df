import jstat from "jstat";
import { type Interval, upperShare } from "./interval.ts";
import type { TwoWay } from "./two-way.ts";

/**
 * The six coefficients of Shrout & Fleiss 1979 (Psychological Bulletin 86(2), 420–428), by their names there:
 * `1` each subject has repeats of its own; `2` the same repeats for all, a sample of many (agreement); `3` the same
 * repeats for all and no others (consistency). `single` is one measurement, `mean` the mean of all k.
 */
export type Model = 1 | 2 | 3;
export type Of = "single" | "mean";

/** An intraclass correlation with its confidence interval; 1 is full agreement, and it can be negative. */
export interface Icc extends Interval {
  readonly value: number;
}

/**
 * Returns the intraclass correlation of a table. Intervals after Shrout & Fleiss 1979 and McGraw & Wong 1996
 * (Psychological Methods 1(1), 30–46). Null where values differ by nothing but their column: there is nothing to agree
 * on.
 */
export function intraclass(table: TwoWay, model: Model, of: Of, level = 0.95): Icc | null {
  if (table.between === 0 && table.error === 0) return null;
  const single = model === 2 ? agreement(table, level) : ratio(table, model, level);
  return of === "single" ? single : ofMean(single, table.repeats);
}

/** Returns ICC(1,1) or ICC(3,1): the subjects' spread against one kind of error. */
function ratio(table: TwoWay, model: 1 | 3, level: number): Icc {
  const { subjects: n, repeats: k, between } = table;
  const noise = model === 1 ? table.within : table.error;
  const below = model === 1 ? n * (k - 1) : (n - 1) * (k - 1);
  const share = upperShare(level);
  const correlation = (error: number) => (between - error) / (between + (k - 1) * error);
  return {
    value: correlation(noise),
    low: correlation(noise * jstat.centralF.inv(share, n - 1, below)),
    high: correlation(noise / jstat.centralF.inv(share, below, n - 1)),
  };
}

/** Returns ICC(2,1), with Satterthwaite's degrees of freedom for columns and error together. */
function agreement(table: TwoWay, level: number): Icc {
  const { subjects: n, repeats: k, between, columns, error } = table;
  const value = (between - error) / (between + (k - 1) * error + (k * (columns - error)) / n);
  if (columns === 0 && error === 0) return { value, low: value, high: value };
  // Below zero the two parts would cancel out and leave no degrees of freedom.
  const degrees = satterthwaite(table, Math.max(0, value));
  const share = upperShare(level);
  const lower = jstat.centralF.inv(share, n - 1, degrees);
  const upper = jstat.centralF.inv(share, degrees, n - 1);
  const both = k * columns + (k * n - k - n) * error;
  return {
    value,
    low: (n * (between - lower * error)) / (lower * both + n * between),
    high: (n * (upper * between - error)) / (both + n * upper * between),
  };
}

function satterthwaite({ subjects: n, repeats: k, columns, error }: TwoWay, value: number): number {
  const ofColumns = k * value * columns;
  const ofError = (n * (1 + (k - 1) * value) - k * value) * error;
  const sum = (k - 1) * (n - 1) * (ofColumns + ofError) ** 2;
  return sum / ((n - 1) * ofColumns ** 2 + ofError ** 2);
}

/** Steps up from one measurement to the mean of k (Spearman and Brown's formula), interval included. */
function ofMean({ value, low, high }: Icc, k: number): Icc {
  const step = (single: number) => (k * single) / (1 + (k - 1) * single);
  return { value: step(value), low: step(low), high: step(high) };
}
