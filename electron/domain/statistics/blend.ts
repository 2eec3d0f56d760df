import type { Estimate } from "./reliability.ts";

/**
 * Degrees of freedom of the starting typical error: two, as much as three pairs of a store's own.
 * The squares are pooled by degrees of freedom, so that with 60 pairs (59) and a start of f times the truth the used
 * error is √((2 f² + 59) / 61) of it. For f from ½ to 2, the range of the sources, that lies between 0.988 and 1.049,
 * within 5 %; with three degrees a start twice too large would still be 7 % off. With fewer than two the first few
 * pairs, which may agree by luck, would make noise look far too small.
 */
export const startingDegrees = 2;

/** A typical error pooled from a starting one and a store's own. */
export interface Blend {
  readonly amount: number;
  /** Degrees of freedom behind it, the start's included. */
  readonly degrees: number;
  /** True if trials within a day made it larger. */
  readonly raised: boolean;
}

/**
 * Pools a starting typical error with that of a store's own pairs. Trials of one session can make it larger, never
 * smaller: they lack the day-to-day variation, so that noise is at least what they show. All three in one unit.
 */
export function blend(starting: number, pairs: Estimate | null, trials: Estimate | null): Blend {
  const between = pool({ amount: starting, degrees: startingDegrees }, pairs);
  const raised = trials === null ? between : pool(between, trials);
  // Compares the results, so that no rounding of two nearly equal ones counts as a rise.
  return raised.amount > between.amount ? { ...raised, raised: true } : { ...between, raised: false };
}

interface Weighed {
  readonly amount: number;
  readonly degrees: number;
}

function pool(one: Weighed, other: Weighed | null): Weighed {
  if (other === null) return one;
  const degrees = one.degrees + other.degrees;
  const square = one.degrees * one.amount ** 2 + other.degrees * other.amount ** 2;
  return { amount: Math.sqrt(square / degrees), degrees };
}
