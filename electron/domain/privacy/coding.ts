import type { Ladder } from "../tests/definition.ts";

/** A mark's bounds: `low` ≤ mark < `high`, in grains. The lowest and the highest part each lack a bound. */
export interface MarkBounds {
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * The coarsening of a test's marks: everything under `below` is one part (bottom-coded), everything from `from` on is
 * one (top-coded), and between them are steps. All bounds are multiples of `step`; `below` is at most `from`.
 */
export interface Coding {
  readonly step: number;
  readonly below: number;
  readonly from: number;
}

/** Returns the part that holds a mark. */
export function intervalOf(value: number, { step, below, from }: Coding): MarkBounds {
  if (value < below) return { low: null, high: below };
  if (value >= from) return { low: from, high: null };
  const low = Math.floor(value / step) * step;
  return { low, high: low + step };
}

/** Returns the number of the part that holds a mark: 0 for the lowest. */
export function partNumber(value: number, { step, below, from }: Coding): number {
  if (value < below) return 0;
  if (value >= from) return partsOf({ step, below, from }) - 1;
  return 1 + Math.floor((value - below) / step);
}

/** Counts the parts of a coding. */
export function partsOf({ step, below, from }: Coding): number {
  return 2 + (from - below) / step;
}

/**
 * Returns every coding that has marks in both ends, and so hides the best and the worst among others. Of two equal
 * codings it keeps the one with the larger step. Codings of more than `mostParts` parts are left out.
 */
export function codingsOf(values: readonly number[], steps: Ladder["steps"], mostParts = Infinity): Coding[] {
  const least = Math.min(...values);
  const most = Math.max(...values);
  return steps.flatMap((step, index) => {
    const coarser = steps.slice(index + 1);
    const lines = linesBetween(least, most, step);
    return lines.flatMap((below) =>
      lines
        .filter((from) => from >= below && 2 + (from - below) / step <= mostParts)
        .filter((from) => from > below || coarser.every((larger) => below % larger !== 0))
        .map((from) => ({ step, below, from })),
    );
  });
}

/** Returns the multiples of `step` above `least` and up to `most`. */
function linesBetween(least: number, most: number, step: number): number[] {
  const first = Math.floor(least / step) + 1;
  const last = Math.floor(most / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_none, index) => (first + index) * step);
}

/**
 * Returns the loss of reporting a mark as an interval, in thousandths: the interval's share of the test's usual range
 * (loss metric of Iyengar 2002, for numbers). An end reaches to the edge of that range.
 */
export function lossOfInterval({ low, high }: MarkBounds, [from, to]: Ladder["usual"]): number {
  const start = Math.max(low ?? from, from);
  const end = Math.min(high ?? to, to);
  return Math.round((1000 * Math.min(Math.max(end - start, 0), to - from)) / (to - from));
}
