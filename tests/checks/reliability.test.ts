import jstat from "jstat";
import { expect, test } from "vitest";
import { spreadOfBest } from "../../electron/domain/statistics/best-of.ts";
import { chanceOfGain } from "../../electron/domain/statistics/change.ts";
import { normalShare } from "../../electron/domain/statistics/normal.ts";
import {
  type Estimate,
  minimalDetectableChange,
  type Pair,
  smallestWorthwhileChange,
  typicalErrorInterval,
  typicalErrorOf,
  typicalShareOf,
} from "../../electron/domain/statistics/reliability.ts";

// Hopkins 2000, Sports Medicine 30(1), 1–15: five people, two trials.
const people: Pair[] = [
  [62, 67],
  [78, 76],
  [81, 87],
  [55, 55],
  [66, 63],
];

/** The limit of agreement, which 95 of 100 pairs of tests stay within: t · SD of the differences. */
function limitOfAgreement({ amount, degrees }: Estimate): number {
  return jstat.studentt.inv(0.975, degrees) * Math.SQRT2 * amount;
}

test("five people: mean change 1.2, SD of differences 4.1, typical error 2.9", () => {
  const error = typicalErrorOf(people);
  expect(error).toMatchObject({ degrees: 4, pairs: 5 });
  expect(error?.meanChange).toBeCloseTo(1.2, 12);
  expect((error?.amount ?? 0) * Math.SQRT2).toBeCloseTo(4.0865633, 7);
  expect(error?.amount).toBeCloseTo(2.8896367, 7);
});

// 4.188 % of the grand mean of 69, and 4.079 % by logarithms: exp(s) − 1, as Hopkins 2000 prints it.
test("five people: coefficient of variation, plain and by logarithms", () => {
  const grandMean = people.flat().reduce((sum, value) => sum + value, 0) / 10;
  expect((100 * (typicalErrorOf(people)?.amount ?? 0)) / grandMean).toBeCloseTo(4.187879, 6);
  expect(100 * Math.expm1(typicalShareOf(people)?.amount ?? 0)).toBeCloseTo(4.079351, 6);
});

test("five people: interval, limits of agreement and minimal detectable change", () => {
  const error = typicalErrorOf(people);
  if (error === null) throw new Error("five pairs have a spread");
  const { low, high } = typicalErrorInterval(error.amount, error.degrees);
  expect(low).toBeCloseTo(1.731277, 6);
  expect(high).toBeCloseTo(8.303532, 6);
  expect(limitOfAgreement(error)).toBeCloseTo(11.346119, 6);
  expect(limitOfAgreement(error) / error.amount).toBeCloseTo(3.926486, 6);
  expect(minimalDetectableChange(error.amount)).toBeCloseTo(8.009517, 6);
});

// Two course handouts after Weir 2005, J Strength Cond Res 19(1): 7.83 with an interval of 5.17 (5.18) to 15.93 (15.94).
test("the interval of an error with seven degrees of freedom", () => {
  const { low, high } = typicalErrorInterval(7.83076, 7);
  expect(low).toBeCloseTo(5.1774, 3);
  expect(high).toBeCloseTo(15.9376, 3);
});

// Hopkins 2000: if nothing has changed, a change of less than x typical errors is seen with the chance Φ(x / √2).
test.each([
  [1, 0.76025],
  [1.5, 0.855578],
  [2, 0.92135],
  [2.771808, 0.975],
])("without a true change, P(change < %f TE) is %f", (x, share) => {
  expect(normalShare(x / Math.SQRT2)).toBeCloseTo(share, 6);
  expect(chanceOfGain(x * 3, 3)).toBeCloseTo(share, 6);
});

test("one difference says nothing of a spread, and a mark of zero has no logarithm", () => {
  expect([typicalErrorOf([]), typicalErrorOf([[60, 66]])]).toEqual([null, null]);
  expect(
    typicalShareOf([
      [60, 66],
      [0, 5],
      [5, 0],
    ]),
  ).toBeNull();
  expect(typicalShareOf([...people, [0, 5]])).toEqual(typicalShareOf(people));
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
