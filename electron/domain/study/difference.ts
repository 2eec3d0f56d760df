import { mean, sampleStandardDeviation } from "simple-statistics";
import { upperShare } from "../statistics/interval.ts";
import { quantileOfT } from "../statistics/student.ts";
import type { Estimated } from "./shape.ts";

/** The mean of paired differences with its t interval, and how far single differences lie around it (SD, n − 1). */
export interface MeanDifference extends Estimated {
  readonly spread: number;
}

/** Returns the mean difference of at least two pairs, in the unit of the differences. */
export function meanDifference(differences: readonly number[], level = 0.95): MeanDifference {
  const [value, spread] = [mean([...differences]), sampleStandardDeviation([...differences])];
  const half = halfOf(differences.length, spread, level);
  return { value, low: value - half, high: value + half, spread };
}

function halfOf(count: number, spread: number, level: number): number {
  return (quantileOfT(upperShare(level), count - 1) * spread) / Math.sqrt(count);
}
