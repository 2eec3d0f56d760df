import jstat from "jstat";

import type { TypicalError } from "./change.ts";
import type { Estimate } from "./repeats.ts";

/** A typical error with its degrees of freedom, in any unit. */
interface Weighed {
  readonly amount: number;
  readonly degrees: number;
}

/** A typical error pooled from a starting one and a store's own. */
interface Blend {
  readonly error: TypicalError;
  /** True if trials within a day made it larger. */
  readonly raised: boolean;
}

/**
 * Pools a starting typical error with that of a store's own repeats, squares by degrees of freedom (the moderated
 * variance of Smyth 2004, Statistical Applications in Genetics and Molecular Biology 3(1)); the start says how the fixed
 * part compares with the share, the repeats how large both are. Trials of one session can make it larger, never
 * smaller: they lack the day-to-day variation, so that noise is at least what they show.
 */
export function blend(start: TypicalError, own: Estimate | null, trials: Estimate | null): Blend {
  const starting = { amount: 1, degrees: start.degrees };
  const between = own === null ? starting : pool(believed(starting, own), own);
  const above = trials === null ? between : pool(between, trials);
  // Compares the results, so that no rounding of two nearly equal ones counts as a rise.
  const raised = above.amount > between.amount;
  const { amount, degrees } = raised ? above : between;
  const parts = { fixed: amount * start.fixed, share: amount * start.share };
  return { error: { ...parts, degrees, assumed: own === null, pairs: own?.pairs ?? 0 }, raised };
}

/**
 * Takes degrees of freedom from a start that the store's own pairs contradict: if the start were right, F would seldom
 * be so large. Three times that chance, at most one, is the share of its degrees that it keeps, so that only chances below
 * a third count. Otherwise a start of half the truth from a large study would make false gains for years. Ours, no
 * published source; `tests/checks/error-simulation` shows what it brings. A start that is too large keeps its weight: it
 * makes no false gains.
 */
function believed(starting: Weighed, own: Weighed): Weighed {
  if (own.amount <= starting.amount) return starting;
  const ratio = (own.amount / starting.amount) ** 2;
  const chance = 1 - jstat.centralF.cdf(ratio, own.degrees, starting.degrees);
  return { ...starting, degrees: starting.degrees * Math.min(1, 3 * chance) };
}

function pool(one: Weighed, other: Weighed): Weighed {
  const degrees = one.degrees + other.degrees;
  const square = one.degrees * one.amount ** 2 + other.degrees * other.amount ** 2;
  return { amount: Math.sqrt(square / degrees), degrees };
}
