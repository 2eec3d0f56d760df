import type { MarkBounds } from "../privacy/coding.ts";
import type { Figures } from "../tests/definition.ts";

/** The marks beyond which a test tells no more; more is better. */
type TestEnds = Figures["ends"];

/** Returns the end of a test that a mark is stuck at: what lies beyond it the test can't tell. */
export function endOf(value: number, { floor, ceiling }: TestEnds): "floor" | "ceiling" | null {
  if (floor !== null && value <= floor) return "floor";
  return ceiling !== null && value >= ceiling ? "ceiling" : null;
}

/** Returns a mark no further than the ceiling: all beyond it are equal. */
export function withinEnds(value: number, { ceiling }: TestEnds): number {
  return ceiling === null ? value : Math.min(value, ceiling);
}

/** Returns the same of a mark of which only bounds are known. */
export function boundsWithinEnds<Bounds extends MarkBounds>(marks: Bounds, { ceiling }: TestEnds): Bounds {
  if (ceiling === null) return marks;
  const { low, high } = marks;
  return {
    ...marks,
    low: low === null ? null : Math.min(low, ceiling),
    high: Math.min(high ?? ceiling + 1, ceiling + 1),
  };
}
