import { expect, test } from "vitest";
import { changeBetween, startingTypicalErrors, verdict } from "../../electron/domain/statistics/change.ts";
import { assumedDrift, chanceReal, driftOf, likelihood } from "../../electron/domain/statistics/drift.ts";
import { calmHall } from "../../electron/domain/statistics/hall.ts";
import { levelOf, speedOf } from "../../electron/domain/statistics/level.ts";
import { newsOf } from "../../electron/domain/statistics/news.ts";
import { normalShare } from "../../electron/domain/statistics/normal.ts";
import { startingVariations } from "../../electron/domain/statistics/variation.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { normals } from "./chance.ts";
import { nile } from "./nile.ts";
import { sleepstudy } from "./sleepstudy.ts";

const weekly = (values: readonly number[]) => values.map((value, week) => ({ day: 7 * week, value }));

// Durbin & Koopman 2001: of the Nile's flow the variances 15099 and 1469.1, the last filtered level 798.37 and its
// variance 4032.2 (from memory, as R's StructTS and others print them, and worked out again).
test("the level of the Nile", () => {
  const level = levelOf(weekly(nile), 1469.1 / 15_099);
  expect(level?.value).toBeCloseTo(798.37, 1);
  expect((level?.variance ?? 0) * 15_099).toBeCloseTo(4032.2, 0);
});

test("the likelihood of the Nile is largest where the published drift is", () => {
  const at = (drift: number) =>
    likelihood([weekly(nile)], drift / 15_099, { fixed: Math.sqrt(15_099), share: 0 });
  const best = Array.from({ length: 200 }, (_, step) => 1000 + 5 * step).toSorted((a, b) => at(b) - at(a))[0];
  expect(Math.abs((best ?? 0) - 1469.1)).toBeLessThan(10);
});

// lme4: lmer(Reaction ~ Days + (Days | Subject), sleepstudy): slope 10.467 with a standard error of 1.546, variance of the
// slopes 35.07, residual variance 654.94. Of a full table, the mean of the single slopes is the common one, and its
// standard error theirs / √18; the squares of nine days about their mean are 82.5.
test("the speeds of the sleep study, without any drift", () => {
  const speeds = sleepstudy.map((row) => speedOf(weekly(row), 0));
  const slopes = speeds.map((speed) => speed?.perWeek ?? Number.NaN);
  const mean = slopes.reduce((sum, slope) => sum + slope, 0) / 18;
  const variance = slopes.reduce((sum, slope) => sum + (slope - mean) ** 2, 0) / 17;
  expect(mean).toBeCloseTo(10.467, 3);
  expect(Math.sqrt(variance / 18)).toBeCloseTo(1.546, 3);
  expect(speeds[0]?.variance).toBeCloseTo(1 / 82.5, 9);
  expect(variance - 654.94 * (speeds[0]?.variance ?? 0)).toBeCloseTo(35.07, 1);
});

// Efron & Morris 1977, Scientific American 236(5): batting averages of 18 players in 45 tries; the mean is .265 and the
// shrinkage c = .212 = 1 − 15 / S (values from memory). So S = 19.04, and the likelihood without the mean is largest where
// the true spread makes 1 − 17 / S = .107 of all.
test("the spread of true batting averages", () => {
  const averages = [
    ...[0.4, 0.378, 0.356, 0.333, 0.311, 0.311, 0.289, 0.267, 0.244, 0.244],
    ...[0.222, 0.222, 0.222, 0.222, 0.222, 0.2, 0.178, 0.156],
  ];
  const error = Math.sqrt((0.265 * 0.735) / 45 / 2);
  const at = (drift: number) =>
    likelihood(
      averages.map((average) => weekly([0, average])),
      drift,
      { fixed: error, share: 0 },
    );
  const shares = Array.from({ length: 300 }, (_, step) => step / 1000);
  const [best = 0] = shares.toSorted((a, b) => at((2 * b) / (1 - b)) - at((2 * a) / (1 - a)));
  const published = 1 - ((1 - 0.212) * 17) / 15;
  expect(Math.abs(best - published)).toBeLessThan(0.005);
});

test("with one earlier mark, an error that is known and a calm hall, the word is the one of two marks alone", () => {
  const draw = normals(26);
  for (const code of testCodes) {
    for (let step = 0; step < 300; step += 1) {
      const [from, to] = [200 + 40 * draw(), 200 + 40 * draw()].map((value) =>
        Math.round(Math.max(0, value)),
      );
      const earlier = [{ date: "2026-03-14", value: from ?? 0 }];
      const calm = { ...startingVariations[code], hall: calmHall };
      const news = newsOf(code, { date: "2026-11-14", value: to ?? 0 }, earlier, calm);
      const { gain, spread } = changeBetween(code, from ?? 0, to ?? 0);
      const chance = normalShare(Math.abs(gain) / spread);
      const word =
        chance < 0.8 ? "noise" : `${chance < 0.975 ? "likely" : "clear"} ${gain > 0 ? "gain" : "loss"}`;
      expect(news).toMatchObject({ verdict: word, level: from, change: gain });
      expect(verdict(code, from ?? 0, to ?? 0)).toBe(word);
    }
  }
});

test("the chance is the one of a normal prior, and of a test that varies much it is small", () => {
  // Of true changes with SD τ = 1 typical error: Φ(1.96 √(1 / 3)) = 0.871, worked out by hand; likewise for ½ and 2.
  const only = (variance: number) => ({
    likely: [{ perWeek: variance, weight: 1 }],
    perWeek: variance,
    changes: 60,
  });
  expect(chanceReal(1.96, 2, 1, only(1))).toBeCloseTo(0.871, 3);
  expect(chanceReal(1.96, 2, 1, only(0.25))).toBeCloseTo(0.743, 3);
  expect(chanceReal(-1.96, 2, 1, only(4))).toBeCloseTo(0.945, 3);
  expect(chanceReal(0, 2, 14, assumedDrift)).toBeCloseTo(0.5, 12);
  expect(assumedDrift.likely.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
});

test("a store's own marks move the drift towards how much its athletes change", () => {
  const draw = normals(4);
  const { fixed } = { ...startingTypicalErrors["push-up"], fixed: 20 };
  const changing = (by: number) =>
    driftOf(
      Array.from({ length: 60 }, () => {
        const own = 1000 + 100 * draw();
        return [
          { day: 0, value: own + fixed * draw() },
          { day: 98, value: own + by * fixed * draw() + fixed * draw() },
        ];
      }),
      { fixed, share: 0 },
    );
  const perTest = [0, 1, 2].map((by) => 14 * changing(by).perWeek);
  expect(perTest[0]).toBeLessThan(0.5);
  expect(Math.abs((perTest[1] ?? 0) - 1)).toBeLessThan(0.7);
  expect(Math.abs((perTest[2] ?? 0) - 4)).toBeLessThan(2);
  expect(changing(1).changes).toBe(60);
  expect(driftOf([[{ day: 0, value: 3 }]], { fixed, share: 0 })).toBe(assumedDrift);
});
