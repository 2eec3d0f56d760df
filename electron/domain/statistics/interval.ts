/** An estimate's confidence interval, in the estimate's own unit. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Returns the share below an interval's upper end, with equal tails: 0.975 for a level of 0.95. */
export function upperShare(level: number): number {
  if (!(level > 0 && level < 1)) throw new RangeError("A confidence level is between 0 and 1.");
  return (1 + level) / 2;
}
