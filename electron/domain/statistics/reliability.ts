import jstat from "jstat";
import { sampleStandardDeviation } from "simple-statistics";
import { type Interval, upperShare } from "./interval.ts";

/** Returns the confidence interval of a typical error: TE · √(df / χ²). */
export function typicalErrorInterval(amount: number, degrees: number, level = 0.95): Interval {
  const share = upperShare(level);
  const end = (p: number) => amount * Math.sqrt(degrees / jstat.chisquare.inv(p, degrees));
  return { low: end(share), high: end(1 - share) };
}

/**
 * Returns the smallest change that matters among these athletes: 0.2 of the SD between them (n − 1). Null with fewer
 * than two. Source: Hopkins 2004, Sportscience 8; a small effect after Cohen (from memory).
 */
export function smallestWorthwhileChange(marks: readonly number[]): number | null {
  return marks.length < 2 ? null : 0.2 * sampleStandardDeviation([...marks]);
}
