import { expect, test } from "vitest";
import { ranksOf, standingOf } from "../../electron/domain/statistics/standing.ts";

// Standard competition ranking (World Athletics Technical Rules on ties, from memory; rows recomputed).
test.each<[number[], "higher" | "lower", number[]]>([
  [[30, 25, 25, 20], "higher", [1, 2, 2, 4]],
  [[10_200, 10_200, 10_500, 10_100], "lower", [2, 2, 4, 1]],
  [[5, 5, 5], "higher", [1, 1, 1]],
  [[], "higher", []],
])("%j, %s is better: %j", (values, better, places) => {
  expect(ranksOf(values, better)).toEqual(places);
});

// Common practice, no source: a first mark is no best, and a best is better than all before it.
test.each<["higher" | "lower", number, number[], string]>([
  ["higher", 20, [], "first"],
  ["higher", 21, [20, 18], "best"],
  ["higher", 20, [18, 20], "equal"],
  ["higher", 19, [20, 18], "below"],
  ["lower", 399_900, [400_000, 420_000], "best"],
  ["lower", 400_000, [400_000, 420_000], "equal"],
  ["lower", 410_000, [400_000, 420_000], "below"],
])("%s is better: %i after %j is %s", (better, value, earlier, expected) => {
  expect(standingOf(better, value, earlier)).toBe(expected);
});
