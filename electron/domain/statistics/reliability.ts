import jstat from "jstat";
import { mean, sampleStandardDeviation } from "simple-statistics";
import { type Interval, upperShare } from "./interval.ts";
import { normalQuantile } from "./normal.ts";
import type { TwoWay } from "./two-way.ts";

/** Two marks of one athlete, the earlier first. */
export type Pair = readonly [before: number, after: number];

/** A typical error worked out from data. */
export interface Estimate {
  /** In the unit of the marks, or as a share of the mark when it was worked out on logarithms. */
  readonly amount: number;
  readonly degrees: number;
  readonly pairs: number;
  /** How much better or worse the second was all in all; no part of the error. In the same unit. */
  readonly meanChange: number;
}

/**
 * Typical error from repeated tests: the SD of the paired differences / √2, n − 1 degrees of freedom. Null with fewer
 * than two pairs: one difference says nothing of a spread. Source: Hopkins 2000, Sports Medicine 30(1), 1–15.
 */
export function typicalErrorOf(pairs: readonly Pair[]): Estimate | null {
  return ofDifferences(pairs.map(([before, after]) => after - before));
}

/**
 * The same as a share of the mark, on logarithms: for tests that swing the more the larger the mark is. Pairs with a
 * mark of zero or below have no logarithm and are left out. Source: Hopkins 2000.
 */
export function typicalShareOf(pairs: readonly Pair[]): Estimate | null {
  const usable = pairs.filter(([before, after]) => before > 0 && after > 0);
  return ofDifferences(usable.map(([before, after]) => Math.log(after / before)));
}

function ofDifferences(differences: number[]): Estimate | null {
  const pairs = differences.length;
  if (pairs < 2) return null;
  const amount = sampleStandardDeviation(differences) / Math.SQRT2;
  return { amount, degrees: pairs - 1, pairs, meanChange: mean(differences) };
}

/** A spread on logarithms as a coefficient of variation (share): exp(s) − 1, as Hopkins 2000 prints it. */
export function asVariation(share: number): number {
  return Math.expm1(share);
}

/** The confidence interval of a typical error: TE · √(df / χ²). */
export function typicalErrorInterval(amount: number, degrees: number, level = 0.95): Interval {
  const share = upperShare(level);
  const end = (p: number) => amount * Math.sqrt(degrees / jstat.chisquare.inv(p, degrees));
  return { low: end(share), high: end(1 - share) };
}

/** Standard error of measurement: the root of the error mean square, without what every subject did in one column. */
export function measurementError(table: TwoWay): number {
  return Math.sqrt(table.error);
}

/**
 * The same from an intraclass correlation and the SD of all values. It depends on which coefficient is taken and on who
 * was tested, so that the root of the error mean square is to be preferred (Weir 2005, J Strength Cond Res 19(1)).
 */
export function measurementErrorFrom(spread: number, icc: number): number {
  return spread * Math.sqrt(1 - icc);
}

/** The least difference between two marks that noise alone makes in one of twenty: 1.96 · √2 · typical error. */
export function minimalDetectableChange(typicalError: number, level = 0.95): number {
  return normalQuantile(upperShare(level)) * Math.SQRT2 * typicalError;
}

/** How far two tests of one athlete lie apart in 95 of 100: t · SD of the differences (limits of agreement). */
export function limitOfAgreement({ amount, degrees }: Estimate, level = 0.95): number {
  return jstat.studentt.inv(upperShare(level), degrees) * Math.SQRT2 * amount;
}

/**
 * The smallest change that matters among these athletes: 0.2 of the SD between them (n − 1). Null with fewer than two.
 * Source: Hopkins 2004, Sportscience 8; a small effect after Cohen (from memory).
 */
export function smallestWorthwhileChange(marks: readonly number[]): number | null {
  return marks.length < 2 ? null : 0.2 * sampleStandardDeviation([...marks]);
}
