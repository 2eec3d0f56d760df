import { expect, test } from "vitest";
import {
  chanceOfGain,
  differsFromLast,
  typicalError,
  verdict,
} from "../../electron/domain/statistics/change.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";

// Hopkins 2000, Sports Medicine 30(1), 1–15: a change of x typical errors, Φ(x / √2). Values recomputed.
test.each([
  [1, 0.76025],
  [1.5, 0.855578],
  [2, 0.92135],
  [2.771808, 0.975],
  [-2.771808, 0.025],
  [0, 0.5],
])("the chance that %f typical errors are a gain is %f", (errors, chance) => {
  expect(Math.abs(chanceOfGain(errors * 2.8896367, 2.8896367) - chance)).toBeLessThan(1e-6);
});

// Hopkins 2000, worked example: typical error = SD of the differences / √2 = 2.89 and the smallest change that is
// clear at 97.5 % is 8.0095. On a grain a hundredth of the unit: 800 is only likely, 801 clear.
test("the smallest clear change of the worked example", () => {
  const amount = 288.96367;
  const error = { kind: "grains", amount, assumed: false, pairs: 5, starting: 200 } as const;
  expect([800, 801].map((change) => verdict("push-up", 6900, 6900 + change, error))).toEqual([
    "likely gain",
    "clear gain",
  ]);
});

// Markovic et al. 2004, J Strength Cond Res 18(3) (4 %); Tong et al. 2014, Phys Ther Sport 15(1) and field tests (6 %);
// push-up 2 reps, agility 1 landing and endurance 3 % are ours, no source.
test.each<[TestCode, number, number]>([
  ["push-up", 30, 2],
  ["agility", 118, 4],
  ["vertical", 450, 18],
  ["core", 200, 12],
  ["endurance", 400_000, 12_000],
])("the starting typical error of %s at %i is %f grains", (code, value, error) => {
  expect(typicalError(code, value)).toBeCloseTo(error, 9);
});

// Thresholds 0.80 and 0.975 lie at 0.8416 · √2 = 1.190 and 1.95996 · √2 = 2.772 typical errors (normal quantiles).
test.each<[TestCode, number, number, string]>([
  ["push-up", 20, 20, "noise"],
  ["push-up", 20, 22, "noise"],
  ["push-up", 20, 23, "likely gain"],
  ["push-up", 20, 25, "likely gain"],
  ["push-up", 20, 26, "clear gain"],
  ["push-up", 20, 18, "noise"],
  ["push-up", 20, 17, "likely loss"],
  ["push-up", 20, 14, "clear loss"],
  ["agility", 100, 104, "noise"],
  ["agility", 100, 105, "likely gain"],
  ["agility", 100, 111, "likely gain"],
  ["agility", 100, 112, "clear gain"],
  // A lower time is the better one.
  ["endurance", 400_000, 400_100, "noise"],
  ["endurance", 400_000, 380_000, "likely gain"],
  ["endurance", 400_000, 360_000, "clear gain"],
  ["endurance", 400_000, 420_000, "likely loss"],
  ["endurance", 400_000, 440_000, "clear loss"],
  ["core", 0, 0, "noise"],
])("%s from %i to %i: %s", (code, from, to, expected) => {
  expect(verdict(code, from, to)).toBe(expected);
});

// Ours, no source: ask when more than four typical errors apart.
test("four typical errors apart is not yet more than four", () => {
  expect([28, 29, 12, 11].map((value) => differsFromLast("push-up", 20, value))).toEqual([
    false,
    true,
    false,
    true,
  ]);
  expect([116, 117].map((value) => differsFromLast("agility", 100, value))).toEqual([false, true]);
});
