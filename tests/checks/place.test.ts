import { expect, test } from "vitest";
import { percentileRank, wilsonInterval } from "../../electron/domain/statistics/place.ts";
import { quantile } from "../../electron/domain/statistics/quantile.ts";

// The examples of the percentile rank in the documentation of a general statistics library (its "mean" kind, which is
// mid-rank: the mean of the strict and the weak rank); values recomputed from the definition.
test.each([
  [[1, 2, 3, 4], 3, 62.5],
  [[1, 2, 3, 3, 4], 3, 60],
  [[3, 6, 7, 8, 8, 10, 13, 15, 16, 20], 8, 40],
])("among %j the mid-rank of %d is %d", (marks, value, expected) => {
  expect(percentileRank("higher", value, marks)).toBeCloseTo(expected, 12);
});

// The same definition read from the other side: where lower is better, the better side is below.
test.each([
  [[1, 2, 3, 4], 3, 37.5],
  [[3, 6, 7, 8, 8, 10, 13, 15, 16, 20], 8, 60],
])("where lower is better, among %j a mark of %d is at %d", (marks, value, expected) => {
  expect(percentileRank("lower", value, marks)).toBeCloseTo(expected, 12);
});

// Source: Newcombe 1998, Statistics in Medicine 17, 857 to 872: 81 of 263 by Wilson's score method.
test("Wilson's interval of 81 in 263", () => {
  const { low, high } = wilsonInterval(81, 263);
  expect(low).toBeCloseTo(0.2552885, 7);
  expect(high).toBeCloseTo(0.3662096, 7);
});

// Wilson 1927, Journal of the American Statistical Association 22; recomputed independently from the formula.
test.each([
  [0, 10, 0, 0.277533],
  [1, 10, 0.017876, 0.40415],
  [10, 20, 0.299298, 0.700702],
  [15, 20, 0.531299, 0.888138],
  [30, 30, 0.886487, 1],
])("Wilson's interval of %d in %d", (count, n, low, high) => {
  const interval = wilsonInterval(count, n);
  expect(interval.low).toBeCloseTo(low, 6);
  expect(interval.high).toBeCloseTo(high, 6);
});

// Hyndman & Fan 1996, The American Statistician 50(4), type 7 of 15 20 35 40 50: the two shares not yet checked.
test("type 7 in the middle and above it", () => {
  expect(quantile([15, 20, 35, 40, 50], 0.5)).toBeCloseTo(35, 12);
  expect(quantile([15, 20, 35, 40, 50], 0.75)).toBeCloseTo(40, 12);
  const oneToTen = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  expect(quantile(oneToTen, 0.75)).toBeCloseTo(7.75, 12);
});
