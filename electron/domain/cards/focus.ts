import { likelyChance } from "../statistics/change.ts";
import { normalShare } from "../statistics/normal.ts";
import type { TestCode } from "../tests/registry.ts";

/** One test of an athlete, with its figures that compare with those of the other tests. */
export interface Compared {
  readonly test: TestCode;
  /** The change since the last test in its own noise (√2 typical errors); positive is better. Null without one. */
  readonly change: number | null;
  /** The place in a reference group, as a band of percentiles; only bands of one group are compared. */
  readonly place: PlaceBand | null;
}

interface PlaceBand {
  /** The reference group of the mark: equal texts mean equal groups. */
  readonly group: string;
  /** Whole percentiles, 0 to 100, better is higher. */
  readonly low: number;
  readonly high: number;
}

/** The training focus: the one test that the marks point at, or all tests evenly where they point at none. */
export type Focus =
  /** place: ranks below most of the others. change: has moved less than the others since the last test. */
  | { readonly kind: "test"; readonly test: TestCode; readonly by: "place" | "change" }
  /** few: too few to compare. alike: no test differs from the others by more than noise. */
  | { readonly kind: "even"; readonly why: "few" | "alike" };

/** A test can only be weak beside at least two others. */
const fewest = 3;

/**
 * Picks the test that is weakest relative to the athlete's own other tests, if the data can show one. The place in a
 * reference group decides first, since it says where an athlete stands; then the change since the last test. Our rule,
 * no published source.
 */
export function focusOf(tests: readonly Compared[]): Focus {
  const placed = placedAlike(tests);
  const changed = tests.flatMap(({ test, change }) => (change === null ? [] : { test, change }));
  const byPlace = lowestPlace(placed);
  if (byPlace !== null) return { kind: "test", test: byPlace, by: "place" };
  const byChange = leastChange(changed);
  if (byChange !== null) return { kind: "test", test: byChange, by: "change" };
  const enough = Math.max(placed.length, changed.length) >= fewest;
  return { kind: "even", why: enough ? "alike" : "few" };
}

interface Placed extends PlaceBand {
  readonly test: TestCode;
}

/** Returns the tests placed in one and the same group: the group that most of them share. */
function placedAlike(tests: readonly Compared[]): readonly Placed[] {
  const placed = tests.flatMap(({ test, place }) => (place === null ? [] : { test, ...place }));
  const groups = [...Map.groupBy(placed, ({ group }) => group).values()];
  return groups.toSorted((a, b) => b.length - a.length)[0] ?? [];
}

/**
 * Returns the test whose whole band lies below the bands of more than half of the others, or the lowest of several such
 * tests; null for none, or for two that are equal.
 */
function lowestPlace(placed: readonly Placed[]): TestCode | null {
  if (placed.length < fewest) return null;
  const [lowest, next] = placed
    .filter((one) => placed.filter(({ low }) => low > one.high).length > (placed.length - 1) / 2)
    .toSorted((a, b) => middle(a) - middle(b));
  if (lowest === undefined) return null;
  return next !== undefined && middle(next) === middle(lowest) ? null : lowest.test;
}

function middle({ low, high }: PlaceBand): number {
  return (low + high) / 2;
}

/**
 * Returns the test that changed least, if the chance that it truly lags behind the mean of the others is likely (0.80),
 * although it was picked as the least of several: by Bonferroni's bound each of n may be wrong in 0.20 / n. A change in
 * units of its noise has the standard deviation 1, its distance from the mean of m others √(1 + 1/m). So where nothing
 * truly differs, at most one athlete in five gets a test named.
 */
function leastChange(
  changed: readonly { readonly test: TestCode; readonly change: number }[],
): TestCode | null {
  if (changed.length < fewest) return null;
  const [least, ...others] = changed.toSorted((a, b) => a.change - b.change);
  if (least === undefined) return null;
  const mean = others.reduce((sum, { change }) => sum + change, 0) / others.length;
  const chance = normalShare((mean - least.change) / Math.sqrt(1 + 1 / others.length));
  return chance >= 1 - (1 - likelyChance) / changed.length ? least.test : null;
}
