import { expect, test } from "vitest";
import { biasesOf } from "../../electron/domain/study/bias.ts";
import { meanDifference } from "../../electron/domain/study/difference.ts";
import { pairsOf } from "../../electron/domain/study/limits.ts";
import { athletesForBias, athletesForError } from "../../electron/domain/study/needed.ts";
import { studyResult } from "../../electron/domain/study/result.ts";
import { mini, twice, wright } from "./peak-flow.ts";
import { shroutAndFleiss } from "./shrout-fleiss.ts";

const rowsOf = (table: readonly (readonly number[])[]) =>
  table.map((values, athleteId) => ({ athleteId, values }));

// The published table gives mean squares of 11.24, 32.49 and 1.02 and an ICC(2,1) of .29; its parts are worked out of the
// mean squares by hand, (11.2417 − 1.0194) / 4 and (32.4861 − 1.0194) / 6. The generalised interval of the same mean squares
// was drawn four million times with numpy: 0.02687 to 0.74555.
test("Shrout and Fleiss's six targets and four judges as a study", () => {
  const told = studyResult(rowsOf(shroutAndFleiss), 1);
  expect(told?.icc?.value).toBeCloseTo(0.29, 2);
  expect(Math.abs((told?.icc?.low ?? 0) - 0.02687)).toBeLessThan(0.005);
  expect(Math.abs((told?.icc?.high ?? 0) - 0.74555)).toBeLessThan(0.005);
  expect(told?.parts.athletes.variance).toBeCloseTo(2.5556, 4);
  expect(told?.parts.series.variance).toBeCloseTo(5.2444, 4);
  expect(told?.parts.rest.variance).toBeCloseTo(1.0194, 4);
  expect(told?.typicalError.value).toBeCloseTo(Math.sqrt(1.0194), 4);
  expect(told?.typicalError.degrees).toBe(15);
  // Judges' means 7.667, 2.5, 4.333 and 6.667: the first against the mean of the others, 4.5.
  expect(told?.biases.map(({ value }) => Number(value.toFixed(3)))).toEqual([3.167, -3.722, -1.278, 1.833]);
  expect(told?.biases[0]?.word).toBe("higher");
  expect(told?.biases[1]?.word).toBe("lower");
});

// Bland & Altman 1986, Lancet 327(8476), 307–310, first blow of each meter (from memory): mean difference −2.1 with an
// interval of −22.0 to 17.8, SD 38.8, limits −79.7 and 75.5 by 2 SD, intervals −114.3 to −45.1 and 40.9 to 110.1. Here the
// limits are at 1.96 SD, 1.6 nearer, as in their paper of 1999, and so are their intervals' ends, to less than 2.5.
test("Bland and Altman's two meters", () => {
  const first = twice(wright).map(([blow = 0], at) => [blow, twice(mini)[at]?.[0] ?? 0]);
  const [pair] = pairsOf(first);
  expect(pair?.bias.value).toBeCloseTo(-2.118, 3);
  expect(pair?.bias.spread).toBeCloseTo(38.765, 3);
  expect(pair?.bias.low).toBeCloseTo(-22.0, 1);
  expect(pair?.bias.high).toBeCloseTo(17.8, 1);
  const published = [
    [pair?.lower.value, -79.7, 1.7],
    [pair?.upper.value, 75.5, 1.7],
    [pair?.lower.low, -114.3, 2.5],
    [pair?.lower.high, -45.1, 2.5],
    [pair?.upper.low, 40.9, 2.5],
    [pair?.upper.high, 110.1, 2.5],
  ] as const;
  for (const [value = Number.NaN, printed, within] of published) {
    expect(Math.abs(value - printed), `${value} is not ${printed}`).toBeLessThan(within);
  }
  const [own, other] = biasesOf(first, 1);
  expect([own?.word, other?.word]).toEqual(["alike", "alike"]);
  expect(own?.value).toBe(-(other?.value ?? 0));
});

// R: t.test(extra ~ group, data = sleep, paired = TRUE): mean −1.58, interval −2.4598858 to −0.7001142.
test("ten sleepers: the shift of a second visit with its interval", () => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
  const told = meanDifference(first.map((value, at) => value - (second[at] ?? 0)));
  expect(told.value).toBeCloseTo(-1.58, 9);
  expect(told.low).toBeCloseTo(-2.4598858, 7);
  expect(told.high).toBeCloseTo(-0.7001142, 7);
});

// R: power.t.test(delta = d, sd = 1, power = 0.8, type = "one.sample") gives n = 199.0, 33.37, 14.30 and 9.94 (from memory).
test.each([
  [0.2, 199],
  [0.5, 34],
  [0.8, 15],
  [1, 10],
])("a bias of %f spreads takes %i athletes", (bias, athletes) => {
  expect(Math.abs(athletesForBias(1, bias, 2) - athletes)).toBeLessThanOrEqual(1);
});

// Any printed table: χ²(0.025) is 40.482 with 60 degrees and 48.758 with 70, so √(60 / 40.482) = 1.217 and
// √(70 / 48.758) = 1.198: the interval reaches 20 % up somewhere between.
test("the typical error to within 20 % takes 61 to 70 degrees of freedom", () => {
  const two = athletesForError(2);
  expect(two).toBeGreaterThan(61);
  expect(two).toBeLessThanOrEqual(71);
  expect(athletesForError(3)).toBe(Math.ceil((two - 1) / 2) + 1);
});
