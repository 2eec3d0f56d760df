import { expect, test } from "vitest";
import { spreadOfBest } from "../../electron/domain/statistics/best-of.ts";
import { blend } from "../../electron/domain/statistics/blend.ts";
import { normalShare } from "../../electron/domain/statistics/normal.ts";
import {
  smallestWorthwhileChange,
  typicalErrorInterval,
} from "../../electron/domain/statistics/reliability.ts";
import { errorOfRepeats, type Repeat } from "../../electron/domain/statistics/repeats.ts";
import { withinRows } from "../../electron/domain/statistics/within.ts";
import { mini, twice, wright } from "./peak-flow.ts";
import { shroutAndFleiss } from "./shrout-fleiss.ts";

const grains = { fixed: 1, share: 0 };

/** Each row's values as an athlete's first, second, third mark. */
function runs(rows: readonly (readonly number[])[]): Repeat[][] {
  return rows.map((row) => row.map((value, at) => ({ visit: at + 1, value })));
}

// Hopkins 2000, Sports Medicine 30(1), 1–15: five people, two trials.
const people = [
  [62, 67],
  [78, 76],
  [81, 87],
  [55, 55],
  [66, 63],
];

test("five people: SD of differences 4.1, typical error 2.9", () => {
  const error = errorOfRepeats(runs(people), grains);
  expect(error).toMatchObject({ degrees: 4, pairs: 5 });
  expect((error?.amount ?? 0) * Math.SQRT2).toBeCloseTo(4.0865633, 7);
  expect(error?.amount).toBeCloseTo(2.8896367, 7);
});

// 4.079 % by logarithms, as Hopkins 2000 prints it: exp(s) − 1. A share of the mean of two marks is the logarithm of
// their ratio to its third order, so that no more than the third decimal may differ.
test("five people: as a share of the mark", () => {
  const share = errorOfRepeats(runs(people), { fixed: 0, share: 0.01 })?.amount ?? 0;
  expect(100 * Math.expm1(share / 100)).toBeCloseTo(4.079, 2);
});

test("five people: interval of the typical error", () => {
  const error = errorOfRepeats(runs(people), grains);
  const { low, high } = typicalErrorInterval(error?.amount ?? 0, error?.degrees ?? 0);
  expect(low).toBeCloseTo(1.731277, 6);
  expect(high).toBeCloseTo(8.303532, 6);
});

// Bland & Altman's 17 people. 15.307 and 19.911 are within-subject SDs of one way, as published in their later paper (1999,
// Statistical Methods in Medical Research 8); of two ways, without the shift of the second blow, it is 15.361.
test("seventeen people, two meters: within-subject SD of one way and of two", () => {
  const oneWay = (blows: readonly number[]) =>
    withinRows(twice(blows).map((row, at) => row.map((value) => ({ column: at, value }))));
  expect(Math.sqrt(oneWay(wright)?.square ?? 0)).toBeCloseTo(15.307, 3);
  expect(Math.sqrt(oneWay(mini)?.square ?? 0)).toBeCloseTo(19.911, 3);
  expect(oneWay(wright)?.degrees).toBe(17);
  expect(errorOfRepeats(runs(twice(wright)), grains)).toMatchObject({ degrees: 16, pairs: 17 });
  expect(errorOfRepeats(runs(twice(wright)), grains)?.amount).toBeCloseTo(15.361, 3);
});

test("the mean square of a full table is the published one, and holes change the degrees of freedom", () => {
  const rows = shroutAndFleiss.map((row) => row.map((value, column) => ({ column, value })));
  expect(withinRows(rows)?.square).toBeCloseTo(1.0194, 4);
  expect(withinRows(rows)?.degrees).toBe(15);
  // Without one value one degree less; a row that shares no column with the others takes a part of its own.
  expect(withinRows([rows[0]?.slice(1) ?? [], ...rows.slice(1)])?.degrees).toBe(14);
  expect(
    withinRows([
      ...rows,
      [
        { column: 8, value: 1 },
        { column: 9, value: 7 },
      ],
    ])?.degrees,
  ).toBe(15);
});

test("the same table ten thousand times, as many repeats as a hall has after years, leaves what it left once", () => {
  const rows = shroutAndFleiss.map((row) => row.map((value, column) => ({ column, value })));
  const times = 10_000;
  const many = withinRows(Array.from({ length: times }, () => rows).flat());
  const degrees = (6 * times - 1) * 3;
  expect(many?.degrees).toBe(degrees);
  expect(many?.square).toBeCloseTo((1.0194 * 15 * times) / degrees, 4);
});

// R: t.test(extra ~ group, data = sleep, paired = TRUE): t = −4.0621, df = 9; its standard error is the typical error's.
test("ten sleepers: the paired t of R's own example", () => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
  const error = errorOfRepeats(runs(first.map((value, at) => [value, second[at] ?? 0])), grains);
  expect(error?.degrees).toBe(9);
  expect(-1.58 / (((error?.amount ?? 0) * Math.SQRT2) / Math.sqrt(10))).toBeCloseTo(-4.0621, 4);
});

// limma's squeezeVar: (df · var + df.prior · var.prior) / (df + df.prior), the moderated variance of Smyth 2004. Five
// people with a start of 2 worth two degrees: √((2 · 4 + 4 · 8.35) / 6) = 2.626785.
test("a start and the repeats are pooled as in limma", () => {
  const start = { ...grains, fixed: 2, degrees: 2, assumed: true, pairs: 0 };
  const own = errorOfRepeats(runs(people), start);
  const { error } = blend(start, own, null);
  expect(error).toMatchObject({ degrees: 6, assumed: false, pairs: 5 });
  expect(error.fixed).toBeCloseTo(2.626785, 6);
});

// Of F(4, 2) the share above x is 1 − u², u = 2x / (2x + 1) (by hand: with two degrees below it is a power). A start of 1
// leaves 8.35 of F: 1 − 0.9435² = 0.1098, of which three times is 0.329 of two degrees.
test("a start that the repeats contradict counts less, one that is too large does not", () => {
  const start = { ...grains, degrees: 2, assumed: true, pairs: 0 };
  const used = (fixed: number) =>
    blend({ ...start, fixed }, errorOfRepeats(runs(people), { ...start, fixed }), null);
  const kept = 2 * 3 * (1 - (16.7 / 17.7) ** 2);
  expect(used(1).error.degrees).toBeCloseTo(4 + kept, 6);
  expect(used(1).error.fixed).toBeCloseTo(Math.sqrt((kept + 4 * 8.35) / (4 + kept)), 6);
  expect(used(4).error.degrees).toBe(6);
});

// Two course handouts after Weir 2005, J Strength Cond Res 19(1): 7.83 with an interval of 5.17 (5.18) to 15.93 (15.94).
test("the interval of an error with seven degrees of freedom", () => {
  const { low, high } = typicalErrorInterval(7.83076, 7);
  expect(low).toBeCloseTo(5.1774, 3);
  expect(high).toBeCloseTo(15.9376, 3);
});

test("one athlete's difference says nothing of a spread", () => {
  expect([errorOfRepeats([], grains), errorOfRepeats(runs([[60, 66]]), grains)]).toEqual([null, null]);
});

// 20 men of a fitness club (A. C. Linnerud), as general statistics packages carry it; 0.2 of the SD between athletes,
// after Hopkins 2004, Sportscience 8 (from memory), recomputed.
test.each([
  ["chins", [5, 2, 12, 12, 13, 4, 8, 6, 15, 17, 17, 13, 14, 1, 6, 12, 4, 11, 15, 2], 1.057256],
  [
    "sit-ups",
    [162, 110, 101, 105, 155, 101, 101, 125, 200, 251, 120, 210, 215, 50, 70, 210, 60, 230, 225, 110],
    12.513315,
  ],
  ["jumps", [60, 60, 101, 37, 58, 42, 38, 40, 40, 250, 38, 115, 105, 50, 31, 120, 25, 80, 73, 43], 10.255494],
])("smallest worthwhile change of %s", (_exercise, marks, worthwhile) => {
  expect(smallestWorthwhileChange(marks)).toBeCloseTo(worthwhile, 6);
});

test("one athlete has no spread", () => {
  expect(smallestWorthwhileChange([40])).toBeNull();
});

// Teichroew 1956, Annals of Mathematical Statistics 27 (table from memory): here by summing up the density of the
// largest of k standard normal values, k φ(x) Φ(x)^(k − 1).
test("the best of k trials swings less than one", () => {
  for (let trials = 1; trials <= 10; trials += 1) {
    let [mean, square] = [0, 0];
    const step = 0.002;
    for (let x = -9; x < 9; x += step) {
      const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
      const share = trials * density * normalShare(x) ** (trials - 1) * step;
      mean += x * share;
      square += x * x * share;
    }
    expect(spreadOfBest(trials)).toBeCloseTo(Math.sqrt(square - mean * mean), 5);
  }
});
