import jstat from "jstat";
import { mean, sampleStandardDeviation, quantile as theirQuantile, tTestTwoSample } from "simple-statistics";
import { expect, test } from "vitest";
import { intraclass } from "../../electron/domain/statistics/agreement.ts";
import { normalQuantile, normalShare } from "../../electron/domain/statistics/normal.ts";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import {
  type Pair,
  smallestWorthwhileChange,
  typicalErrorOf,
} from "../../electron/domain/statistics/reliability.ts";
import { twoWay } from "../../electron/domain/statistics/two-way.ts";
import { normals } from "./chance.ts";

/**
 * Two general-purpose libraries, on seeded random data: simple-statistics and jstat. The t test of one sample of the
 * first takes the SD of a whole population, so that the second's is asked.
 */
const draw = normals(1979);
const sets = Array.from({ length: 50 }, (_, index) => {
  const size = 3 + (index % 18);
  return Array.from({ length: size }, (): Pair => {
    const talent = 400 + 60 * draw();
    return [talent + 16 * draw(), talent + 5 + 16 * draw()];
  });
});

test("the typical error is the spread that both libraries give for the differences", () => {
  for (const pairs of sets) {
    const differences = pairs.map(([before, after]) => after - before);
    const error = typicalErrorOf(pairs);
    expect(error?.amount).toBeCloseTo(sampleStandardDeviation(differences) / Math.SQRT2, 9);
    expect(error?.amount).toBeCloseTo(jstat.stdev(differences, true) / Math.SQRT2, 9);
    expect(error?.meanChange).toBeCloseTo(mean(differences), 9);
  }
});

test("a paired t by the typical error is the library's", () => {
  for (const pairs of sets) {
    const error = typicalErrorOf(pairs);
    if (error === null) throw new Error("at least three pairs");
    const t = error.meanChange / ((Math.SQRT2 * error.amount) / Math.sqrt(pairs.length));
    const differences = pairs.map(([before, after]) => after - before);
    expect(-t).toBeCloseTo(jstat.tscore(0, differences), 9);
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

// At the lower end of a one-way ICC's interval, F of the data has a chance of 2.5 % to be that high (Shrout & Fleiss 1979).
test("the interval's ends are where F has the chances that they stand for", () => {
  for (const pairs of sets) {
    const { between, within, subjects } = twoWay(pairs);
    const icc = intraclass(twoWay(pairs), 1, "single");
    const chanceAt = (rho: number) =>
      jstat.centralF.cdf(((between / within) * (1 - rho)) / (1 + rho), subjects - 1, subjects);
    expect(chanceAt(icc?.low ?? Number.NaN)).toBeCloseTo(0.975, 6);
    expect(chanceAt(icc?.high ?? Number.NaN)).toBeCloseTo(0.025, 6);
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
