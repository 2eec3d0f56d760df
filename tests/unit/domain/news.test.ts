import fc from "fast-check";
import { expect, test } from "vitest";
import type { Length } from "../../../electron/domain/length.ts";
import { calmHall } from "../../../electron/domain/statistics/hall.ts";
import { newsOf } from "../../../electron/domain/statistics/news.ts";
import { startingVariations } from "../../../electron/domain/statistics/variation.ts";
import { heightOf } from "../../../electron/domain/tests/vertical/protocol.ts";
import { cm, inches } from "../../lengths.ts";

const today = (value: number) => ({ date: "2026-09-12", value });
const earlier = [
  { date: "2026-01-17", value: 45 * 200 },
  { date: "2026-05-16", value: 43 * 200 },
];

test("a best is held against the best before, a change against the level by all marks", () => {
  const { byChance, chanceReal, moved, ...news } = newsOf("vertical", today(47 * 200), earlier, {
    ...startingVariations.vertical,
    hall: calmHall,
  });
  // By hand: in 17 weeks the variance grows by 17 · 1.06 / 14.5 = 1.2428 to 2.2428, so that the second mark counts 0.6916
  // and the level is 43.617 cm. 3.383 cm more are 1.502 of √(1² + (0.0312 · 45.31)²) · √1.6916: 2 (1 − Φ(1.502)) = 0.133.
  expect(byChance).toBeCloseTo(0.133, 3);
  expect(chanceReal).toBeGreaterThan(0.7);
  expect(chanceReal).toBeLessThan(1 - (byChance ?? 0) / 2);
  // Judged by the level of two marks, of variance 0.69, and the new one's own 1; the errors of those marks alone make less.
  expect(moved?.judged).toBeCloseTo(1.301, 3);
  expect(moved?.alone).toBeLessThan(moved?.judged ?? 0);
  expect(moved?.alone).toBeGreaterThan(Math.sqrt(1 + 1 / 2));
  expect(news).toEqual({
    standing: "best",
    earlier: 2,
    bestBefore: 45 * 200,
    gainOverBest: 2 * 200,
    previous: 43 * 200,
    previousDate: "2026-05-16",
    level: 8720,
    change: 680,
    learnt: 0,
    learntError: 0,
    beyond: expect.closeTo(676.6, 0),
    verdict: "likely gain",
  });
});

test("a first mark has no news but that it is the first", () => {
  expect(newsOf("core", today(60), [])).toMatchObject({
    standing: "first",
    bestBefore: null,
    change: null,
    verdict: null,
  });
});

test("the same jump in quarter inches is never a best over itself, whatever the reach", () => {
  const quarters = fc.integer({ min: 200, max: 420 });
  fc.assert(
    fc.property(quarters, quarters, fc.integer({ min: 1, max: 160 }), (one, other, jump) => {
      const height = (reach: number) =>
        heightOf({ standingReach: inches(reach / 4), touchReach: inches((reach + jump) / 4) });
      expect(height(one)).toBe(height(other));
      const news = newsOf("vertical", today(height(one)), [{ date: "2026-01-17", value: height(other) }]);
      expect(news.standing).toBe("equal");
    }),
  );
});

test("a tape in centimetres and one in inches never make a best of less than a millimetre", () => {
  // 43 cm against 17 in (43.18 cm), and 38 cm against 15 in (38.1 cm): 1 in = 25.4 mm exactly.
  const held = (now: number, before: number) =>
    newsOf("vertical", today(now), [{ date: "2026-01-17", value: before }]).standing;
  const mark = (touch: Length, reach: Length) => heightOf({ standingReach: reach, touchReach: touch });
  const seventeen = mark(inches(102), inches(85));
  expect(held(seventeen, mark(cm(262), cm(219)))).toBe("best");
  const fifteen = mark(inches(100), inches(85));
  expect(held(fifteen, mark(cm(257), cm(219)))).toBe("equal");
  expect(held(mark(inches(100.25), inches(85)), fifteen)).toBe("best");
});
