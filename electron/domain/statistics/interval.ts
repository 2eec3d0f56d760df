/** An estimate's confidence interval, in the estimate's own unit. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** The share of an interval that lies below its upper end, both tails taken alike: 0.975 of a level of 0.95. */
export function upperShare(level: number): number {
  if (!(level > 0 && level < 1)) throw new RangeError("A confidence level is between 0 and 1.");
  return (1 + level) / 2;
}
