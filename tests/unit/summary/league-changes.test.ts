import { expect, test } from "vitest";
import { calmHall } from "../../../electron/domain/statistics/hall.ts";
import { assumedLearning } from "../../../electron/domain/statistics/learning.ts";
import { unjudged } from "../../../electron/domain/statistics/news.ts";
import { leastTogether } from "../../../electron/domain/statistics/shared.ts";
import { startingVariations } from "../../../electron/domain/statistics/variation.ts";
import { leagueChangesOf } from "../../../electron/domain/summary/league-changes.ts";
import { ofEachTest } from "../../../electron/domain/tests/registry.ts";
import { changedDay, type Result } from "./changed-day.ts";

function changed(league: string, changes: readonly number[], more: Partial<Result> = {}): Result[] {
  return changes.map((change) => ({ league, before: 20, now: 20 + change, ...more }));
}

/** Variations of a hall that is known to be calm. */
const calm = ofEachTest((code) => ({ ...startingVariations[code], hall: calmHall }));
const told = (results: readonly Result[]) => leagueChangesOf(changedDay(results), calm);

test("eight athletes: mean, interval, spread and words worked out by hand", () => {
  const [row, ...others] = told(changed("Quarry Lane", [1, 2, 3, 4, 5, 6, 7, 8]));
  expect(others).toEqual([]);
  expect(row).toMatchObject({ league: "Quarry Lane", test: "push-up", variant: "full", pairs: 8, firsts: 0 });
  // Mean 4.5, variance 6, error √(6 / 8) = 0.866, t of 7 degrees 2.3646: 4.5 ± 2.048.
  expect(row?.found?.mean.amount).toBe(4.5);
  expect(row?.found?.mean.low).toBeCloseTo(2.452, 3);
  expect(row?.found?.mean.high).toBeCloseTo(6.548, 3);
  expect(row?.found?.holds).toBe(true);
  // Errors at means of 20.5 to 24, whose squares are 496.375 in the mean: 1.5² + 0.066² · 496.375 = 4.412, and twice that
  // is more than the variance.
  expect(row?.found?.spread).toMatchObject({ amount: 0, low: 0 });
  expect(row?.found?.error).toBeCloseTo(Math.sqrt(4.412), 3);
  expect(row?.found?.assumed).toBe(true);
  // 1.96 · √2 · √(1.5² + (0.066 · 23)²) = 5.915, and √1.09 times that with what days may move: 6.18, so that seven and eight are clear.
  expect(row?.found).toMatchObject({ clearGains: 2, clearLosses: 0, others: null });
  // All moved by about 4.5 reps, 2.14 errors of 2.1. Clear is from 1.96 · √2.18 = 2.894 errors on, and what is left of an
  // athlete's own √2 is √(1 − π / 17) of it, 1.277: of 0.59 of these 27.8 % are beyond, and of 3.94 nobody.
  expect(row?.found?.byChance.gains).toBeCloseTo(8 * 0.278, 1);
  expect(row?.found?.byChance.losses).toBeCloseTo(0, 3);
});

test("what a test gains by being known is taken off and told, and its error widens the interval", () => {
  const [by, variance] = [0.5, 0.04];
  const learning = {
    steps: [{ by, athletes: 20 }, ...assumedLearning.steps.slice(1)],
    covariance: [[variance, 0, 0], ...assumedLearning.covariance.slice(1)],
  };
  const teaching = ofEachTest((code) => ({ ...calm[code], learning }));
  const second = changedDay(changed("Quarry Lane", [1, 2, 3, 4, 5, 6, 7, 8]));
  const found = leagueChangesOf(second, teaching)[0]?.found;
  // The typical error is 2.1, at a mean of the two results.
  expect(found?.learnt).toBeCloseTo(by * 2.1, 1);
  expect(found?.mean.amount).toBeCloseTo(4.5 - (found?.learnt ?? 0), 9);
  // 0.75 of the mean and (0.2 · 2.1)² of the learning: √0.926 = 0.962, and t of 7 · (0.926 / 0.75)² = 10.7 degrees is 2.209.
  expect((found?.mean.high ?? 0) - (found?.mean.amount ?? 0)).toBeCloseTo(0.962 * 2.209, 1);
  // Who comes for the third time has taken that step before.
  const third = changedDay(changed("Quarry Lane", [1, 2, 3, 4, 5, 6, 7, 8], { visits: 2 }));
  expect(leagueChangesOf(third, teaching)[0]?.found).toMatchObject({ learnt: 0, mean: { amount: 4.5 } });
});

test("what days may move is in the mean's range, and not in the difference to a league of the same days", () => {
  const hall = { variance: 0.09, atMost: 0.25, days: 0 };
  const day = changedDay([
    ...changed("Foundry Town", [0, 1, 2, 3, 4, 5, 6, 7]),
    ...changed("Quarry Lane", [0, 1, 2, 3, 4, 5, 6, 7]),
  ]);
  const restless = leagueChangesOf(
    day,
    ofEachTest((code) => ({ ...calm[code], hall })),
  )[0]?.found;
  const known = leagueChangesOf(day, calm)[0]?.found;
  const half = (ends: { low: number; high: number } | null | undefined) =>
    ((ends?.high ?? 0) - (ends?.low ?? 0)) / 2;
  // Two days of at most half an error of 2.1 each: 0.75 + 2 · 0.25 · 2.1² = 2.95.
  expect(half(restless?.mean)).toBeCloseTo(Math.sqrt(2.95) * 1.98, 1);
  expect(half(known?.mean)).toBeCloseTo(Math.sqrt(0.75) * 2.3646, 3);
  expect(half(restless?.others)).toBeCloseTo(half(known?.others), 6);
});

test("of seven nothing is said but how many they are", () => {
  expect(leastTogether).toBe(8);
  const [row] = told(changed("Quarry Lane", [9, 9, 9, 9, 9, 9, 9]));
  expect(row).toEqual({
    ...{ league: "Quarry Lane", test: "push-up", variant: "full" },
    ...{ pairs: 7, firsts: 0, unlike: 0, unfinished: 0, found: null },
  });
});

test("a shorter circuit is a gain; who stopped and who is new are counted and not in the mean", () => {
  const circuits = { test: "endurance" as const, variant: "" };
  const faster = [1, 2, 3, 4, 5, 6, 7, 8].map((seconds) => ({
    ...{ league: "Quarry Lane", ...circuits },
    ...{ before: 400_000, now: 400_000 - 1000 * seconds },
  }));
  const [row] = told([
    ...faster,
    { league: "Quarry Lane", ...circuits, before: 400_000, now: null },
    { league: "Quarry Lane", ...circuits, before: null, now: 300_000 },
  ]);
  expect(row).toMatchObject({ pairs: 8, firsts: 1, unfinished: 1, unlike: 0 });
  expect(row?.found?.mean.amount).toBe(4500);
});

test("a result of more trials than last time is counted and not compared", () => {
  const day = changedDay(changed("Quarry Lane", [1, 2, 3, 4, 5, 6, 7, 8, 9]));
  const marks = day.marks.map((mark, at) =>
    at === 8 && mark.news !== null ? { ...mark, news: { ...mark.news, ...unjudged } } : mark,
  );
  const [row] = leagueChangesOf({ ...day, marks }, calm);
  expect(row).toMatchObject({ pairs: 8, unlike: 1, firsts: 0 });
  expect(row?.found?.mean.amount).toBe(4.5);
});

test("a league is compared with all others together, where they are eight", () => {
  const own = changed("Quarry Lane", [1, 2, 3, 4, 5, 6, 7, 8]);
  const rows = told([
    ...own,
    ...changed("Foundry Town", [0, 1, 2, 3]),
    ...changed("Apple Row", [0, 1, 2, 3]),
    ...changed("Apple Row", [30], { variant: "knee" }),
  ]);
  expect(rows.map(({ league, variant, pairs }) => [league, variant, pairs])).toEqual([
    ["Apple Row", "full", 4],
    ["Apple Row", "knee", 1],
    ["Foundry Town", "full", 4],
    ["Quarry Lane", "full", 8],
  ]);
  const others = rows.at(-1)?.found?.others;
  expect(others).toMatchObject({ amount: 3, pairs: 8 });
  // Variances 6 and 10 / 7, error √(6 / 8 + 10 / 56) = 0.9636; degrees 0.92857² / (0.75² / 7 + 0.17857² / 7) = 10.15.
  expect((others?.high ?? 0) - 3).toBeCloseTo(0.9636 * 2.2236, 2);
  const [few] = told([...own, ...changed("Foundry Town", [0, 1, 2, 3, 4, 5, 6])]).slice(1);
  expect(few?.found?.others).toBeNull();
});

test("what holds is decided for all leagues and tests of the day at once", () => {
  // By itself a chance of 0.03: t of 7 degrees is 2.71 with a mean of 2.347 and the spread of one to eight.
  const shifted = [1, 2, 3, 4, 5, 6, 7, 8].map((value) => value - 4.5 + 2.347);
  const alone = told(changed("Quarry Lane", shifted));
  expect(alone[0]?.found?.mean.byChance).toBeGreaterThan(0.025);
  expect(alone[0]?.found?.mean.byChance).toBeLessThan(0.05);
  expect(alone[0]?.found?.holds).toBe(true);
  const still = changed("Foundry Town", [-3, -2, -1, 0, 0, 1, 2, 3]);
  expect(told([...changed("Quarry Lane", shifted), ...still]).map(({ found }) => found?.holds)).toEqual([
    false,
    false,
  ]);
});
