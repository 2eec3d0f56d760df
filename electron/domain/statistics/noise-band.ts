import type { TestCode } from "../tests/registry.ts";
import { likelyChance, startingTypicalErrors, type TypicalError } from "./change.ts";
import { normalQuantile } from "./normal.ts";

/** Two bounds in grains, seldom whole; a mark between them is no news. */
export interface NoiseBand {
  readonly low: number;
  readonly high: number;
}

/** A typical error of nearly the whole mark would give no upper end; no test is that poor. */
const widest = 0.95;

/**
 * Returns the marks that the verdict calls "within test noise" after a last test of `last` grains: those whose change
 * has a chance below 0.80 of being true, |Δ| < Φ⁻¹(0.80) · √2 · TE. A typical error that is a share is applied to the
 * mean of the two marks, as in the verdict, so that the band reaches a little farther up than down.
 */
export function noiseBand(
  test: TestCode,
  last: number,
  error: Pick<TypicalError, "kind" | "amount"> = startingTypicalErrors[test],
): NoiseBand {
  const reach = normalQuantile(likelyChance) * Math.SQRT2 * error.amount;
  if (error.kind === "grains") return { low: Math.max(0, last - reach), high: last + reach };
  const half = Math.min(reach / 2, widest);
  return { low: (last * (1 - half)) / (1 + half), high: (last * (1 + half)) / (1 - half) };
}
