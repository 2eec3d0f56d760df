import { expect, test } from "vitest";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import { rankSumChances, shiftOf } from "../../electron/domain/summary/shift.ts";

/** How many pairs have the larger value in the first group. */
function pairsAbove(x: readonly number[], y: readonly number[]): number {
  return x.flatMap((one) => y.filter((other) => one > other)).length;
}

function chanceOf(n: number, m: number, holds: (u: number) => boolean): number {
  return rankSumChances(n, m).reduce((sum, chance, u) => (holds(u) ? sum + chance : sum), 0);
}

/**
 * Permeability of the human chorioamnion at term (x) and at 12 to 26 weeks (y): Hollander & Wolfe 1973, Nonparametric
 * Statistical Methods, page 69, as carried by R's documentation of wilcox.test.
 */
const term = [0.8, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46];
const early = [1.15, 0.88, 0.9, 0.74, 1.21];

test("the example of Hollander & Wolfe: W = 35, one-sided p = 0.1272 (R, wilcox.test; p from memory)", () => {
  expect(pairsAbove(term, early)).toBe(35);
  expect(chanceOf(10, 5, (u) => u >= 35)).toBeCloseTo(0.1272, 4);
});

test("its shift is 0.305 with -0.15 to 0.76 at 96 % (Hollander & Wolfe, section 4.3, from memory)", () => {
  const shift = shiftOf(term, early, 0.96);
  expect(shift?.amount).toBeCloseTo(0.305, 12);
  expect(shift?.low).toBeCloseTo(-0.15, 12);
  expect(shift?.high).toBeCloseTo(0.76, 12);
});

test("a class example printed with R's exact test: W = 8, two-sided p = 0.02557", () => {
  // Statistics for Laboratory Scientists (Johns Hopkins, course 140.615), permutation and non-parametric tests.
  const x = [43.3, 57.1, 35.0, 50.0, 38.2, 61.2];
  const y = [51.9, 95.1, 90.0, 49.7, 101.5, 74.1, 84.5, 46.8, 75.1];
  expect(pairsAbove(x, y)).toBe(8);
  expect(2 * chanceOf(6, 9, (u) => u <= 8)).toBeCloseTo(0.02557, 5);
});

test("the smallest groups in which a two-sided test at 5 % can show anything are four and four", () => {
  // Published tables of U: 0 is critical at 5 % for 4 and 4, and there is no critical value for 4 and 3 (from memory).
  expect(2 * chanceOf(4, 4, (u) => u === 0)).toBeCloseTo(2 / 70, 12);
  expect(2 * chanceOf(4, 3, (u) => u === 0)).toBeCloseTo(2 / 35, 12);
  expect(shiftOf([9, 9, 9, 9], [1, 1, 1, 1], 0.95)).toEqual({ amount: 8, low: 8, high: 8 });
  expect(shiftOf([9, 9, 9, 9], [1, 1, 1], 0.95)).toBeNull();
});

test("the interval holds the true shift at least as often as it says, with ties too", () => {
  // Whole reps from -3 to 3, one group two reps higher; a seeded generator of Park & Miller 1988.
  let state = 20_261_114;
  const chance = () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const draw = (count: number, more: number) =>
    Array.from({ length: count }, () => Math.floor(chance() * 7) - 3 + more);
  const runs = 2000;
  let inside = 0;
  for (let run = 0; run < runs; run += 1) {
    const shift = shiftOf(draw(8, 2), draw(15, 0), 0.95);
    if (shift !== null && shift.low <= 2 && shift.high >= 2) inside += 1;
  }
  expect(inside / runs).toBeGreaterThanOrEqual(0.95);
});

test("the shift is the median of all differences", () => {
  const differences = [5, 3, 8].flatMap((x) => [1, 2].map((y) => x - y));
  expect(quantile(differences, 0.5)).toBe(3.5);
  expect(shiftOf([5, 3, 8, 5, 3, 8], [1, 2, 1, 2, 1, 2], 0.95)?.amount).toBe(3.5);
});
