/** What a mark counts that counts whole: weights are whole numbers of millionths, so that no order of adding matters. */
export const wholeWeight = 1_000_000;

/**
 * How many middle halls one may count as. A third alone does not hold a liar: with five thousand invented marks among a
 * hundred halls it would count as fifty of them, and move the middle to where the best quarter begins. `3-sizes.sql` has
 * the same figure.
 */
const mostMiddleHalls = 3;

/** How many marks of a group are of which size of hall. */
export interface GroupSize {
  /** Marks of the hall in the middle, by marks; of an even number of halls, of the lower one of the two. */
  readonly middle: number;
  /** All marks, of each hall no more than `mostMiddleHalls` middle ones have. */
  readonly total: number;
  /** Marks of the two halls with most; `second` is 0 where there is one hall. */
  readonly largest: number;
  readonly second: number;
}

/**
 * Returns the most marks of one hall that count in a group, so that no hall counts as more than three middle ones, nor
 * for more than a third of all that counts: of the halls' marks n, cut to three middle ones, the largest c with
 * c ≤ ⅓ Σ min(n, c). A half is possible. With a ≥ b the two largest and R all others: a alone is over a third where
 * 3a > a + b + R, and then c = (b + R) / 2 as long as b keeps below it; else both are cut to c = R. A third one never is,
 * since none is larger than R.
 */
export function capOf(size: GroupSize): number {
  const most = mostMiddleHalls * size.middle;
  const [largest, second] = [Math.min(size.largest, most), Math.min(size.second, most)];
  if (3 * largest <= size.total) return most;
  const withoutLargest = size.total - largest;
  return 2 * second <= withoutLargest ? withoutLargest / 2 : withoutLargest - second;
}

/** Returns how many marks of a group count under its cap, in whole ones. */
export function countedUnder(cap: number, { middle, total, largest, second }: GroupSize): number {
  const beyond = (marks: number) => Math.max(0, Math.min(marks, mostMiddleHalls * middle) - cap);
  return Math.floor(total - beyond(largest) - beyond(second));
}
