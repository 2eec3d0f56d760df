import jstat from "jstat";
import { mean, sampleStandardDeviation } from "simple-statistics";
import { type Interval, upperShare } from "./interval.ts";
import { normalQuantile } from "./normal.ts";
import type { TwoWay } from "./two-way.ts";

/** Two marks of one athlete, the earlier first. */
export type Pair = readonly [before: number, after: number];

/** A typical error computed from data. */
export interface Estimate {
  /** In the unit of the marks, or as a share of the mark if computed on logarithms. */
  readonly amount: number;
  readonly degrees: number;
  readonly pairs: number;
  /** Mean improvement from the first to the second mark, in the same unit; no part of the error. */
  readonly meanChange: number;
}

/**
 * Returns the typical error from repeated tests: the SD of the paired differences / √2, n − 1 degrees of freedom. Null
 * with fewer than two pairs: one difference has no spread. Source: Hopkins 2000, Sports Medicine 30(1), 1–15.
 */
export function typicalErrorOf(pairs: readonly Pair[]): Estimate | null {
  return ofDifferences(pairs.map(([before, after]) => after - before));
}

/**
 * Returns the same as a share of the mark, on logarithms: for tests whose variation grows with the mark. Pairs with a
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

/** Converts a spread on logarithms into a coefficient of variation (share): exp(s) − 1, as Hopkins 2000 prints it. */
export function asVariation(share: number): number {
  return Math.expm1(share);
}

/** Returns the confidence interval of a typical error: TE · √(df / χ²). */
export function typicalErrorInterval(amount: number, degrees: number, level = 0.95): Interval {
  const share = upperShare(level);
  const end = (p: number) => amount * Math.sqrt(degrees / jstat.chisquare.inv(p, degrees));
  return { low: end(share), high: end(1 - share) };
}

/** Returns the standard error of measurement: the root of the error mean square, without effects of whole columns. */
export function measurementError(table: TwoWay): number {
  return Math.sqrt(table.error);
}

/**
 * Returns the same from an intraclass correlation and the SD of all values. It depends on the choice of coefficient and
 * on who was tested, so that the root of the error mean square is to be preferred (Weir 2005, J Strength Cond Res
 * 19(1)).
 */
export function measurementErrorFrom(spread: number, icc: number): number {
  return spread * Math.sqrt(1 - icc);
}

/** Returns the difference between two marks that noise alone exceeds once in twenty: 1.96 · √2 · typical error. */
export function minimalDetectableChange(typicalError: number, level = 0.95): number {
  return normalQuantile(upperShare(level)) * Math.SQRT2 * typicalError;
}

/** Returns the limit of agreement, which 95 of 100 pairs of tests stay within: t · SD of the differences. */
export function limitOfAgreement({ amount, degrees }: Estimate, level = 0.95): number {
  return jstat.studentt.inv(upperShare(level), degrees) * Math.SQRT2 * amount;
}

/**
 * Returns the smallest change that matters among these athletes: 0.2 of the SD between them (n − 1). Null with fewer
 * than two. Source: Hopkins 2004, Sportscience 8; a small effect after Cohen (from memory).
 */
export function smallestWorthwhileChange(marks: readonly number[]): number | null {
  return marks.length < 2 ? null : 0.2 * sampleStandardDeviation([...marks]);
}
