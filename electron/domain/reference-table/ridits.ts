import type { MarkBounds } from "../privacy/coding.ts";

/** Marks told by the same bounds (grains; null: open), and what they count together in any unit. */
export interface WeighedBounds extends MarkBounds {
  readonly weight: number;
}

/** Where every interval lies among all of its group, from 0 to 1, with the mean and variance over what counts. */
export interface Ridits {
  /** In ten-thousandths, whole, in the order given. */
  readonly places: readonly number[];
  readonly mean: number;
  readonly variance: number;
}

/** Places are whole numbers of it, so that sums over halls are exact. */
export const placesInAll = 10_000;

/** Steps towards the distribution; after so many, places of honest groups no longer move by a thousandth. */
const steps = 100;

/**
 * Returns where intervals lie in the distribution that they themselves make most likely: at the middle between the share
 * below their lower bound and that below their upper one. Where all bounds are cut at the same points these are mid-ranks
 * (ridits: Bross 1958, Biometrics 14(1)). Halls cut at different points, and an open end says less than it seems: taken
 * by their midpoints, coarse halls would look weaker or stronger than fine ones. The distribution is the one that is
 * consistent with itself (Turnbull 1976, Journal of the Royal Statistical Society B 38(3)), so that a hall's mean place
 * does not depend on how it was cut (scores of that kind: Peto & Peto 1972, same journal A 135(2)): each mark is spread
 * over the parts of its interval by what all marks have there, a hundred times, from equal parts on.
 */
export function riditsOf(marks: readonly WeighedBounds[]): Ridits {
  const cuts = [...new Set(marks.flatMap(({ low, high }) => [low, high]))]
    .filter((bound) => bound !== null)
    .sort((a, b) => a - b);
  const numbers = new Map(cuts.map((cut, index) => [cut, index + 1]));
  const parts = cuts.length + 1;
  const spans = marks.map(({ low, high, weight }): Span => {
    const from = low === null ? 0 : (numbers.get(low) ?? 0);
    return { from, to: high === null ? parts : (numbers.get(high) ?? parts), weight };
  });
  const below = distributionOf(spans, parts);
  const places = spans.map(({ from, to }) =>
    Math.round((placesInAll * ((below[from] ?? 0) + (below[to] ?? 1))) / 2),
  );
  const total = spans.reduce((sum, { weight }) => sum + weight, 0);
  const average = (of: (index: number) => number) =>
    spans.reduce((sum, { weight }, index) => sum + weight * of(index), 0) / total;
  const place = (index: number) => (places[index] ?? 0) / placesInAll;
  const mean = average(place);
  return { places, mean, variance: average((index) => (place(index) - mean) ** 2) };
}

/** An interval as the parts between cuts that it covers: `from` up to before `to`. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
}

/** Returns the share below each part, and 1 at the end. Sums from the left make a step as long as there are intervals. */
function distributionOf(spans: readonly Span[], parts: number): Float64Array {
  const total = spans.reduce((sum, { weight }) => sum + weight, 0);
  const below = Float64Array.from({ length: parts + 1 }, (_none, index) => index / parts);
  const density = new Float64Array(parts + 1);
  for (let step = 0; step < steps; step += 1) {
    density.fill(0);
    for (const { from, to, weight } of spans) {
      const share = (below[to] ?? 0) - (below[from] ?? 0);
      if (share <= 0) continue;
      density[from] = (density[from] ?? 0) + weight / share;
      density[to] = (density[to] ?? 0) - weight / share;
    }
    let [running, sum] = [0, 0];
    let before = below[0] ?? 0;
    for (let part = 0; part < parts; part += 1) {
      running += density[part] ?? 0;
      const after = below[part + 1] ?? 0;
      sum += ((after - before) * Math.max(running, 0)) / total;
      before = after;
      below[part + 1] = sum;
    }
    // What rounding left.
    for (let part = 1; part <= parts; part += 1) below[part] = (below[part] ?? 0) / sum;
  }
  return below;
}
