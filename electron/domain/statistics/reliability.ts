import jstat from "jstat";
import { mean, sampleStandardDeviation } from "simple-statistics";
import { type Interval, upperShare } from "./interval.ts";
import { normalQuantile } from "./normal.ts";

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

/** Returns the confidence interval of a typical error: TE · √(df / χ²). */
export function typicalErrorInterval(amount: number, degrees: number, level = 0.95): Interval {
  const share = upperShare(level);
  const end = (p: number) => amount * Math.sqrt(degrees / jstat.chisquare.inv(p, degrees));
  return { low: end(share), high: end(1 - share) };
}

/** Returns the difference between two marks that noise alone exceeds once in twenty: 1.96 · √2 · typical error. */
export function minimalDetectableChange(typicalError: number, level = 0.95): number {
  return normalQuantile(upperShare(level)) * Math.SQRT2 * typicalError;
}

/**
 * Returns the smallest change that matters among these athletes: 0.2 of the SD between them (n − 1). Null with fewer
 * than two. Source: Hopkins 2004, Sportscience 8; a small effect after Cohen (from memory).
 */
export function smallestWorthwhileChange(marks: readonly number[]): number | null {
  return marks.length < 2 ? null : 0.2 * sampleStandardDeviation([...marks]);
}
