import { sampleStandardDeviation } from "simple-statistics";
import { meanChange } from "../statistics/mean-change.ts";
import type { Estimated } from "./shape.ts";

/** The mean of paired differences with its t interval, and how far single differences lie around it (SD, n − 1). */
export interface MeanDifference extends Estimated {
  readonly spread: number;
}

/** Returns the mean difference of at least two pairs, in the unit of the differences. */
export function meanDifference(differences: readonly number[], level = 0.95): MeanDifference {
  const { amount: value, low, high } = meanChange(differences, level);
  return { value, low, high, spread: sampleStandardDeviation(differences) };
}
