/** Marks that others are ranked among, counted without looking at each. */
export interface MarksInOrder {
  readonly n: number;
  /** How many are less than a value. */
  below(value: number): number;
  /** How many are a value or less. */
  upTo(value: number): number;
}

/** Puts marks in order, once for all that are ranked among them. */
export function inOrder(marks: readonly number[]): MarksInOrder {
  const sorted = Float64Array.from(marks).sort();
  return {
    n: sorted.length,
    below: (value) => firstFrom(sorted, (mark) => mark >= value),
    upTo: (value) => firstFrom(sorted, (mark) => mark > value),
  };
}

/** Returns where in an order the first mark is that has come so far, by bisection; the number of all when none has. */
function firstFrom(sorted: Float64Array, hasCome: (mark: number) => boolean): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (hasCome(sorted[middle] ?? Number.NaN)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Returns the marks of some orders together, without those of others, all of which are among them. */
export function together(these: readonly MarksInOrder[], without: readonly MarksInOrder[]): MarksInOrder {
  const sum = (count: (marks: MarksInOrder) => number) =>
    these.reduce((all, marks) => all + count(marks), 0) -
    without.reduce((all, marks) => all + count(marks), 0);
  return {
    n: sum(({ n }) => n),
    below: (value) => sum((marks) => marks.below(value)),
    upTo: (value) => sum((marks) => marks.upTo(value)),
  };
}
