import { expect, test } from "vitest";
import { quantile, quartiles } from "../../electron/domain/statistics/quantile.ts";

// Source: Hyndman & Fan 1996, The American Statistician 50(4), type 7; the values recomputed from its definition.
test("type 7 of one to ten", () => {
  const oneToTen = [10, 2, 8, 4, 6, 5, 7, 3, 9, 1];
  expect(quantile(oneToTen, 0.25)).toBeCloseTo(3.25, 12);
  expect(quantile(oneToTen, 0.5)).toBeCloseTo(5.5, 12);
  expect(quantile(oneToTen, 0.9)).toBeCloseTo(9.1, 12);
});

test.each([
  [0.1, 17],
  [0.25, 20],
  [0.3, 23],
  [0.4, 29],
  [0.9, 46],
])("type 7 of 15 20 35 40 50 at %d is %d", (share, expected) => {
  expect(quantile([15, 20, 35, 40, 50], share)).toBeCloseTo(expected, 12);
});

// Data of the NIST/SEMATECH e-Handbook 7.2.6.2, whose own rule is type 6 (95.19807); 95.19568 is its type 7.
test("type 7 of the handbook's twelve measurements", () => {
  const measured = [
    95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682,
  ];
  expect(quantile(measured, 0.9)).toBeCloseTo(95.19568, 8);
});

// Linnerud's twenty men, as carried by general statistics packages; type 7 quartiles recomputed independently.
test("quartiles of chins, sit-ups and jumps", () => {
  const chins = [5, 2, 12, 12, 13, 4, 8, 6, 15, 17, 17, 13, 14, 1, 6, 12, 4, 11, 15, 2];
  const jumps = [60, 60, 101, 37, 58, 42, 38, 40, 40, 250, 38, 115, 105, 50, 31, 120, 25, 80, 73, 43];
  expect(quartiles(chins)).toEqual({ lower: 4.75, median: 11.5, upper: 13.25 });
  expect(quartiles(jumps)).toEqual({ lower: 39.5, median: 54, upper: 85.25 });
});

test("one value is all its quantiles; none has no quantile", () => {
  expect(quartiles([7])).toEqual({ lower: 7, median: 7, upper: 7 });
  expect(() => quantile([], 0.5)).toThrow(RangeError);
  expect(() => quantile([1], 1.1)).toThrow(RangeError);
  expect(() => quantile([1], Number.NaN)).toThrow(RangeError);
});
