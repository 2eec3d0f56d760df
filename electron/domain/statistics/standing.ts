import { gain } from "./change.ts";

/** A mark's rank among the athlete's own earlier ones of the same fingerprint. */
export type Standing = "first" | "best" | "equal" | "below";

/**
 * Ranks a mark against earlier ones. A first mark is never a best; a best beats all before it by more than
 * `equalWithin`. Values are grains.
 */
export function standingOf(
  better: "higher" | "lower",
  value: number,
  earlier: readonly number[],
  equalWithin = 0,
): Standing {
  if (earlier.length === 0) return "first";
  const least = Math.min(...earlier.map((before) => gain(better, before, value)));
  if (least > equalWithin) return "best";
  return least >= -equalWithin ? "equal" : "below";
}
