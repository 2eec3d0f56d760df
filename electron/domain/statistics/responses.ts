import type { Interval } from "./interval.ts";
import { typicalErrorInterval } from "./reliability.ts";

/** A variance, and the degrees of freedom behind it: infinitely many of one that is known. */
export interface Variance {
  readonly square: number;
  readonly degrees: number;
}

/** The standard deviation of athletes' true changes, with its interval; nought is a possible answer, at either end too. */
export interface TrueSpread extends Interval {
  /** Nought where changes vary no more than they would of athletes who all changed alike. */
  readonly amount: number;
}

/**
 * Returns how far athletes' true changes lie apart: what changes vary by, less what they vary by when nobody differs,
 * √(SD² − 2 · typical error²). Athletes do not respond differently because their changes do.
 * Source: Hopkins 2015, Journal of Applied Physiology 118, 1444–1446; Atkinson & Batterham 2015, Experimental Physiology
 * 100, 577–588; Swinton et al. 2018, Frontiers in Nutrition 5:41. The interval is that of a difference of two variances by
 * their own χ² intervals (Zou & Donner 2008, Statistics in Medicine 27, 1693–1702; from memory), exact where the second is
 * known: with symmetric intervals the upper end would be too low for few athletes.
 * @param changes of athletes' changes @param noise of a change of somebody who stayed the same
 */
export function trueSpread(changes: Variance, noise: Variance, level = 0.95): TrueSpread {
  const difference = changes.square - noise.square;
  const [own, other] = [intervalOf(changes, level), intervalOf(noise, level)];
  return {
    amount: rootOf(difference),
    low: rootOf(difference - Math.hypot(changes.square - own.low, other.high - noise.square)),
    high: rootOf(difference + Math.hypot(own.high - changes.square, noise.square - other.low)),
  };
}

function intervalOf({ square, degrees }: Variance, level: number): Interval {
  if (!Number.isFinite(degrees)) return { low: square, high: square };
  const { low, high } = typicalErrorInterval(Math.sqrt(square), degrees, level);
  return { low: low ** 2, high: high ** 2 };
}

function rootOf(square: number): number {
  return Math.sqrt(Math.max(0, square));
}
