/** What a mark counts that counts whole: weights are whole numbers of millionths, so that no order of adding matters. */
export const wholeWeight = 1_000_000;

/** How many marks of a group are of which size of hall. */
export interface GroupSize {
  readonly total: number;
  /** Marks of the two halls with most; `second` is 0 where there is one hall. */
  readonly largest: number;
  readonly second: number;
}

/**
 * Returns the most marks of one hall that count in a group, so that no hall counts for more than a third of what counts:
 * the largest c with c ≤ ⅓ Σ min(n, c) over the halls' marks n. A half is possible; Infinity where nothing is too much.
 * With a ≥ b the two largest and R all others: a alone is over a third where 3a > a + b + R, and then c = (b + R) / 2 as
 * long as b keeps below it; else both are cut to c = R. A third one never is, since none is larger than R.
 */
export function capOf({ total, largest, second }: GroupSize): number {
  if (3 * largest <= total) return Infinity;
  const withoutLargest = total - largest;
  return 2 * second <= withoutLargest ? withoutLargest / 2 : withoutLargest - second;
}

/** Returns what each of a hall's `marks` counts in millionths, rounded down. */
export function weightUnder(cap: number, marks: number): number {
  return marks <= cap ? wholeWeight : Math.floor((wholeWeight * cap) / marks);
}

/** Returns how many marks of a group count under a cap, in whole ones. */
export function countedUnder(cap: number, { total, largest, second }: GroupSize): number {
  return Math.floor(total - Math.max(0, largest - cap) - Math.max(0, second - cap));
}
