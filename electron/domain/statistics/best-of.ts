/**
 * The SD of the best of k trials as a share of the SD of one: that of the largest of k standard normal values, k from
 * 1.
 * Source: Teichroew 1956, Annals of Mathematical Statistics 27, table of order statistics (from memory; a test
 * integrates them again).
 */
const spreads = [1, 0.825645, 0.747975, 0.701224, 0.66898, 0.644924, 0.626033, 0.610653, 0.59779, 0.586808];

/** Returns the SD of the best of `trials` as a share of a single trial's. More than ten count as ten. */
export function spreadOfBest(trials: number): number {
  if (!Number.isInteger(trials) || trials < 1)
    throw new RangeError("The best is that of at least one trial.");
  return spreads[Math.min(trials, spreads.length) - 1] ?? Number.NaN;
}
