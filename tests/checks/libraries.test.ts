import jstat from "jstat";
import { quantile as theirQuantile, tTestTwoSample } from "simple-statistics";
import { expect, test } from "vitest";
import { normalQuantile, normalShare } from "../../electron/domain/statistics/normal.ts";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import { smallestWorthwhileChange } from "../../electron/domain/statistics/reliability.ts";
import { errorOfRepeats } from "../../electron/domain/statistics/repeats.ts";
import { quantileOfT, shareOfT } from "../../electron/domain/statistics/student.ts";
import { twoWay } from "../../electron/domain/statistics/two-way.ts";
import { normals } from "./chance.ts";

/**
 * Two general-purpose libraries, on seeded random data: simple-statistics and jstat. The t test of one sample of the
 * first takes the SD of a whole population, so that the second's is asked.
 */
const draw = normals(1979);
const sets = Array.from({ length: 50 }, (_, index) => {
  const size = 3 + (index % 18);
  return Array.from({ length: size }, (): [number, number] => {
    const talent = 400 + 60 * draw();
    return [talent + 16 * draw(), talent + 5 + 16 * draw()];
  });
});

test("the typical error is the spread that a library gives for the differences", () => {
  for (const pairs of sets) {
    const differences = pairs.map(([before, after]) => after - before);
    const runs = pairs.map((pair) => pair.map((value, at) => ({ visit: at + 1, value })));
    const error = errorOfRepeats(runs, { fixed: 1, share: 0 });
    expect(error?.amount).toBeCloseTo(jstat.stdev(differences, true) / Math.SQRT2, 9);
    expect(error?.degrees).toBe(pairs.length - 1);
  }
});

// Any printed table of Student's t.
test.each([
  [0.975, 1, 12.706],
  [0.975, 2, 4.303],
  [0.975, 9, 2.262],
  [0.975, 61, 1.9996],
  [0.8, 2, 1.061],
  [0.8, 20, 0.86],
])("the %f quantile of t with %i degrees is %f", (share, degrees, value) => {
  expect(quantileOfT(share, degrees)).toBeCloseTo(value, 3);
  expect(shareOfT(quantileOfT(share, degrees), degrees)).toBeCloseTo(share, 7);
});

// Closed forms of one and two degrees (Cauchy's distribution, and 1/2 + t / (2 sqrt(2 + t^2))), in any handbook.
test.each([-40, -2.5, -0.01, 0, 0.3, 1.1, 4.4, 12, 900])("the share of t below %f is exact", (t) => {
  expect(shareOfT(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
  expect(shareOfT(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 13);
});

// Ours in place of jstat's, whose fractions stop at 3e-7.
test("Student's t is that of a library, for whole degrees and others, in the middle and in the tails", () => {
  for (const degrees of [0.7, 1, 2, 3.4, 8, 21.5, 60, 400, 20_000]) {
    for (const value of [-40, -6, -2.5, -1, -0.01, 0, 0.3, 1.1, 2, 4.4, 12]) {
      expect(shareOfT(value, degrees)).toBeCloseTo(jstat.studentt.cdf(value, degrees), 6);
    }
    for (const share of [0.0005, 0.025, 0.2, 0.5, 0.8, 0.975, 0.9995]) {
      const ours = quantileOfT(share, degrees);
      expect(shareOfT(ours, degrees)).toBeCloseTo(share, 12);
      expect(ours / (jstat.studentt.inv(share, degrees) || 1)).toBeCloseTo(share === 0.5 ? 0 : 1, 5);
    }
  }
});

// With subjects as groups, F of a one-way analysis of variance is the ratio of the table's mean squares.
test("between and within subjects agree with a one-way analysis of variance", () => {
  for (const pairs of sets) {
    const { between, within } = twoWay(pairs);
    expect(between / within / jstat.anovafscore(...pairs)).toBeCloseTo(1, 9);
  }
});

// Of two columns, F is the square of the paired t, and without the pairing that of two samples.
test("the columns' mean square agrees with t tests", () => {
  for (const pairs of sets) {
    const { columns, error, between, subjects } = twoWay(pairs);
    const differences = pairs.map(([before, after]) => after - before);
    expect(Math.sqrt(columns / error)).toBeCloseTo(Math.abs(jstat.tscore(0, differences)), 8);
    const apart = Math.sqrt(
      columns / ((between * (subjects - 1) + error * (subjects - 1)) / (2 * subjects - 2)),
    );
    const [first, second] = [pairs.map(([before]) => before), pairs.map(([, after]) => after)];
    expect(apart).toBeCloseTo(Math.abs(tTestTwoSample(first, second, 0) ?? Number.NaN), 8);
  }
});

test("SD between athletes, quantiles and the normal distribution", () => {
  for (const pairs of sets) {
    const marks = pairs.map(([before]) => before);
    expect(smallestWorthwhileChange(marks)).toBeCloseTo(jstat.stdev(marks, true) / 5, 9);
    const below = Math.abs(draw()) % 1;
    expect(normalShare(5 * below)).toBeCloseTo(jstat.normal.cdf(5 * below, 0, 1), 9);
    expect(normalQuantile(below)).toBeCloseTo(jstat.normal.inv(below, 0, 1), 6);
  }
  // The libraries have another rule for quantiles between values; on the values themselves all rules agree.
  const odd = [7, 1, 9, 3, 5];
  expect(quantile(odd, 0.5)).toBe(theirQuantile(odd, 0.5));
});
