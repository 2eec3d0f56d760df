import { expect, test } from "vitest";
import {
  chanceBelow,
  changeBetween,
  differsFromLast,
  typicalError,
  verdict,
} from "../../electron/domain/statistics/change.ts";
import { protocolOf, type TestCode } from "../../electron/domain/tests/registry.ts";

const known = { fixed: 288.96367, share: 0, degrees: 2, assumed: true, pairs: 0 };

// Of somebody who stayed the same, the share Φ(x / √2) changes by less than x typical errors one way. Values recomputed.
test.each([
  [1, 0.76025],
  [1.5, 0.855578],
  [2, 0.92135],
  [2.771808, 0.975],
  [0, 0.5],
])("normal variation alone stays below %f typical errors in %f", (errors, chance) => {
  const change = changeBetween("push-up", 6900, 6900 + errors * known.fixed, known);
  expect(Math.abs(chanceBelow(change) - chance)).toBeLessThan(1e-6);
});

// With an error of few degrees of freedom t takes the place of Φ: t(0.975, 4) = 2.7764 (any printed table).
test("an error that few pairs know asks for more", () => {
  const learnt = { ...known, degrees: 4, assumed: false, pairs: 5 };
  const below = (spreads: number) =>
    verdict("push-up", 6900, 6900 + spreads * Math.SQRT2 * known.fixed, learnt);
  expect([below(2.776), below(2.777), below(0.9408), below(0.9411)]).toEqual([
    "likely gain",
    "clear gain",
    "noise",
    "likely gain",
  ]);
});

// Hopkins 2000, worked example: typical error = SD of the differences / √2 = 2.89 and the smallest change that is
// clear at 97.5 % is 8.0095. On a grain a hundredth of the unit: 800 is only likely, 801 clear.
test("the smallest clear change of the worked example", () => {
  expect([800, 801].map((change) => verdict("push-up", 6900, 6900 + change, known))).toEqual([
    "likely gain",
    "clear gain",
  ]);
});

// Markovic et al. 2004, J Strength Cond Res 18(3) (4 % of 40 cm); Tong et al. 2014, Phys Ther Sport 15(1) and field tests
// (6 % of 120 s); 2 push-ups of 20, 1 landing of 28 and 3 % of 6 minutes are ours, no source.
test.each<[TestCode, number, number]>([
  ["push-up", 20, 2],
  ["agility", 28, 1],
  ["vertical", 40, 1.6],
  ["core", 120, 7.2],
  ["endurance", 360, 10.8],
])("the starting typical error of %s at %f is %f in its unit", (code, value, error) => {
  const { perUnit } = protocolOf(code).grain;
  expect(Math.abs(typicalError(code, value * perUnit) / perUnit / error - 1)).toBeLessThan(0.005);
});

// What a share alone called a clear gain, and a watch, a tape and a judge can't tell.
test.each<[TestCode, number, number]>([
  ["core", 15, 18],
  ["core", 20, 24],
  ["vertical", 10, 11.5],
  ["push-up", 60, 66],
])("%s from %f to %f is no clear gain", (code, from, to) => {
  const { perUnit } = protocolOf(code).grain;
  expect(["noise", "likely gain"]).toContain(verdict(code, from * perUnit, to * perUnit));
});

// Thresholds 0.80 and 0.975 lie at 0.8416 · √2 = 1.190 and 1.95996 · √2 = 2.772 typical errors (normal quantiles) at the
// mean of both marks: from 20 to 26 reps √(1.5² + (0.066 · 23)²) = 2.133, so that 6 reps are 2.81 of them.
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
  ["agility", 100, 110, "likely gain"],
  ["agility", 100, 111, "clear gain"],
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
  expect([28, 29, 13, 12].map((value) => differsFromLast("push-up", 20, value))).toEqual([
    false,
    true,
    false,
    true,
  ]);
  expect([115, 116].map((value) => differsFromLast("agility", 100, value))).toEqual([false, true]);
});
