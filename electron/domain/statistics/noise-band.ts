import type { TestCode } from "../tests/registry.ts";
import { likelyChance, spreadsBelow, startingTypicalErrors, type TypicalError } from "./change.ts";
import type { Level } from "./level.ts";

/** Two bounds in grains, seldom whole; a mark between them is no news. */
export interface NoiseBand {
  readonly low: number;
  readonly high: number;
}

/** A share of nearly the whole mark would give no upper end; no test is that poor. */
const widest = 0.95;

/**
 * Returns the marks that the verdict calls "within test noise" against a level by earlier marks: those whose change
 * somebody who stayed the same exceeds with a chance above 0.20. The typical error is taken at the mean of
 * level and the mark, as in the verdict, so that the ends solve (x − level)² = c (fixed² + (share (x + level) / 2)²), and the band
 * reaches a little farther up than down.
 */
export function noiseBand(
  test: TestCode,
  { value: level, variance }: Pick<Level, "value" | "variance">,
  error: TypicalError = startingTypicalErrors[test],
): NoiseBand {
  const reach = Math.sqrt(variance + 1) * spreadsBelow(likelyChance, error);
  const half = Math.min((reach * error.share) / 2, widest) ** 2;
  const middle = (level * (1 + half)) / (1 - half);
  const ends = Math.sqrt(middle ** 2 - level ** 2 + (reach * error.fixed) ** 2 / (1 - half));
  return { low: Math.max(0, middle - ends), high: middle + ends };
}
