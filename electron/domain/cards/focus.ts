import { normalQuantile, normalShare } from "../statistics/normal.ts";
import type { TestCode } from "../tests/registry.ts";

/** One test of an athlete, with its figures that compare with those of the other tests. */
export interface Compared {
  readonly test: TestCode;
  /**
   * The change from the level before, in units of what it varies by when nothing has changed; positive is better. Null
   * where no earlier mark compares.
   */
  readonly change: number | null;
  /** The place in a reference group, as a band of percentiles; only bands of one group are compared. */
  readonly place: PlaceBand | null;
}

interface PlaceBand {
  /** The reference group of the mark: equal texts mean equal groups. */
  readonly group: string;
  /** Whole percentiles, 0 to 100, better is higher: 95 times in 100 the athlete's own place lies between them. */
  readonly low: number;
  readonly high: number;
}

/** The training focus: the one test that the marks point at, or all tests evenly where they point at none. */
export type Focus =
  /** place: ranks below the others. change: has moved less than the others since before. */
  | { readonly kind: "test"; readonly test: TestCode; readonly by: "place" | "change" }
  /** few: too few to compare. alike: no test differs from the others by more than noise. */
  | { readonly kind: "even"; readonly why: "few" | "alike" };

/** A test can only be weak beside at least two others. */
const fewest = 3;

/** The share of athletes without any weakness for whom a test is named all the same, at most, by both routes together. */
const wronglyNamed = 0.2;

/** How good somebody is in a test, on a scale of normal deviates, and its standard error. */
interface Standing {
  readonly test: TestCode;
  readonly value: number;
  readonly error: number;
}

/**
 * Picks the test that is weakest relative to the athlete's own other tests, if the data can show one. The place in a
 * reference group decides first, since it says where an athlete stands; then the change. Where both can be asked, each
 * may be wrong for half as many. Our rule, no published source.
 */
export function focusOf(tests: readonly Compared[]): Focus {
  const routes = [
    { by: "place" as const, standings: placedAlike(tests) },
    { by: "change" as const, standings: tests.flatMap(changed) },
  ].filter(({ standings }) => standings.length >= fewest);
  for (const { by, standings } of routes) {
    const weakest = weakestOf(standings, wronglyNamed / routes.length);
    if (weakest !== null) return { kind: "test", test: weakest, by };
  }
  return { kind: "even", why: routes.length > 0 ? "alike" : "few" };
}

function changed({ test, change }: Compared): Standing[] {
  return change === null ? [] : [{ test, value: change, error: 1 }];
}

/** Returns the tests placed in one and the same group: the group that most of them share. */
function placedAlike(tests: readonly Compared[]): Standing[] {
  const placed = tests.flatMap(({ test, place }) => (place === null ? [] : [{ test, ...place }]));
  const groups = [...Map.groupBy(placed, ({ group }) => group).values()];
  const [largest = []] = groups.toSorted((a, b) => b.length - a.length);
  return largest.map(({ test, low, high }) => {
    const [from, to] = [deviateOf(low), deviateOf(high)];
    return { test, value: (from + to) / 2, error: (to - from) / 2 / normalQuantile(0.975) };
  });
}

/** Returns the normal deviate of a percentile. The very ends, which bands are rounded to, have none of their own. */
function deviateOf(percentile: number): number {
  return normalQuantile(Math.min(99.5, Math.max(0.5, percentile)) / 100);
}

/**
 * Returns the test that stands lowest, if the chance that it truly lies below the mean of the others is large, although
 * it was picked as the lowest of several: by Bonferroni's bound each of n may be wrong in `rate` / n.
 */
function weakestOf(standings: readonly Standing[], rate: number): TestCode | null {
  const [least, ...others] = standings.toSorted((a, b) => a.value - b.value);
  // Of two that stand equally low, neither is the weakest.
  if (least === undefined || others[0]?.value === least.value) return null;
  const mean = others.reduce((sum, { value }) => sum + value, 0) / others.length;
  const square = others.reduce((sum, { error }) => sum + error ** 2, 0) / others.length ** 2;
  const chance = normalShare((mean - least.value) / Math.sqrt(least.error ** 2 + square));
  return chance >= 1 - rate / standings.length ? least.test : null;
}
