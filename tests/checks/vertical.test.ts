import { expect, test } from "vitest";
import { peakPower, vertical } from "../../electron/domain/tests/vertical/protocol.ts";

// Common practice, no source: touch − standing reach, the best trial counts.
test("the best of three trials counts", () => {
  const trials = [2640, 2655, 2600].map((touchReach) => ({ standingReach: 2190, touchReach }));
  expect(vertical.slotSize(vertical.defaults)).toBe(3);
  expect(vertical.score(vertical.defaults, trials)).toEqual({ state: "complete", value: 465 });
});

test("a touch below the standing reach is refused with what to check, a jump of zero only asked about", () => {
  const judge = (touchReach: number) =>
    vertical.plausibility(vertical.defaults, vertical.attempt.parse({ standingReach: 2190, touchReach }));
  expect(judge(2189)).toEqual({
    level: "refuse",
    sentence: { key: "test.vertical.plausibility.touchBelowReach" },
  });
  expect(judge(2190).level).toBe("ask");
});

// Sayers et al. 1999, Med Sci Sports Exerc 31(4), 572–577, squat-jump form (coefficients from memory); rows recomputed.
test.each([
  [460, 68_000, 3817.6],
  [400, 60_000, 3091.0],
  [300, 70_000, 2937.0],
  [500, 80_000, 4604.0],
])("peak power of %i mm and %i g is %f W", (height, mass, watts) => {
  expect(peakPower(height, mass)).toBe(watts);
});

// Canavan & Vescovi 2004, Med Sci Sports Exerc 36(9), 1589–1593, print group means of 65.9 kg: 2920.8 W by this
// equation and 2421.9 to 2425.4 W by their own, 65.1 h + 25.8 m − 1413.1. Both must mean the same height.
test("agrees with a second study's means about the height jumped", () => {
  const theirHeight = (2421.9 + 1413.1 - 25.8 * 65.9) / 65.1;
  expect(peakPower(theirHeight * 10, 65_900)).toBeGreaterThan(2912.8);
  expect(peakPower(theirHeight * 10, 65_900)).toBeLessThan(2928.8);
});

// Ours, no source: no body weighs less than 20 or more than 300 kg.
test("a mass that no body has gives no estimate", () => {
  expect([0, 19_999, 300_001, Number.NaN].map((mass) => peakPower(460, mass))).toEqual([
    null,
    null,
    null,
    null,
  ]);
  expect([20_000, 300_000].map((mass) => peakPower(460, mass))).toEqual([1643.2, 14_327.2]);
});
