import { expect, test } from "vitest";
import { heightOf, peakPower, vertical } from "../../electron/domain/tests/vertical/protocol.ts";
import { parseLength } from "../../electron/domain/units.ts";
import { cm } from "../lengths.ts";

// Common practice, no source: touch − standing reach, the best trial counts.
test("the best of three trials counts", () => {
  const trials = [264, 265.5, 260].map((touch) => ({ standingReach: cm(219), touchReach: cm(touch) }));
  expect(vertical.slotSize(vertical.defaults)).toBe(3);
  expect(vertical.score(vertical.defaults, trials)).toEqual({ state: "complete", value: 46.5 * 200 });
});

test("a touch below the standing reach is refused with what to check, a jump of zero only asked about", () => {
  const judge = (touch: number) =>
    vertical.plausibility(vertical.defaults, { standingReach: cm(219), touchReach: cm(touch) });
  expect(judge(218.5)).toEqual({
    level: "refuse",
    sentence: {
      key: "test.vertical.plausibility.touchBelowReach",
      values: { cm: "218.5", inches: "86.02" },
    },
  });
  expect(judge(219).level).toBe("ask");
});

// Sayers et al. 1999, Med Sci Sports Exerc 31(4), 572–577, squat-jump form (coefficients from memory); rows recomputed.
test.each([
  [460, 68_000, 3817.6],
  [400, 60_000, 3091.0],
  [300, 70_000, 2937.0],
  [500, 80_000, 4604.0],
])("peak power of %i mm and %i g is %f W", (height, mass, watts) => {
  expect(peakPower(height * 20, mass)).toBe(watts);
});

// Canavan & Vescovi 2004, Med Sci Sports Exerc 36(9), 1589–1593, print group means of 65.9 kg: 2920.8 W by this
// equation and 2421.9 to 2425.4 W by their own, 65.1 h + 25.8 m − 1413.1. Both must mean the same height.
test("agrees with a second study's means about the height jumped", () => {
  const theirHeight = (2421.9 + 1413.1 - 25.8 * 65.9) / 65.1;
  expect(peakPower(theirHeight * 200, 65_900)).toBeGreaterThan(2912.8);
  expect(peakPower(theirHeight * 200, 65_900)).toBeLessThan(2928.8);
});

// Ours, no source: no body weighs less than 20 or more than 300 kg.
test("a mass that no body has gives no estimate", () => {
  expect([0, 19_999, 300_001, Number.NaN].map((mass) => peakPower(46 * 200, mass))).toEqual([
    null,
    null,
    null,
    null,
  ]);
  expect([20_000, 300_000].map((mass) => peakPower(46 * 200, mass))).toEqual([1643.2, 14_327.2]);
});

// 1 in = 25.4 mm exactly (international yard and pound agreement, 1959): a quarter inch is 635 hundredths of a
// millimetre. Reaches of 70 to 120 in with each jump of 0 to 36 in, in quarters: 201 × 145 pairs.
test("every one of 29,145 jumps that are read in quarter inches is exact, and one jump is one mark", () => {
  const exact = pairsOf(
    "in",
    { from: 70, to: 120, highest: 36, step: 0.25 },
    ({ jump, mark }) => mark * 5 === jump * 2540,
  );
  expect(exact).toEqual({ pairs: 29_145, held: 29_145 });
});

test("so is every jump that is read in half centimetres", () => {
  const exact = pairsOf(
    "cm",
    { from: 180, to: 300, highest: 90, step: 0.5 },
    ({ jump, mark }) => mark * 5 === jump * 1000,
  );
  expect(exact).toEqual({ pairs: 43_621, held: 43_621 });
});

interface Reaches {
  readonly from: number;
  readonly to: number;
  readonly highest: number;
  readonly step: number;
}

/** Reads each reach with each jump above it as a station does, and counts the marks that hold. */
function pairsOf(
  unit: "cm" | "in",
  { from, to, highest, step }: Reaches,
  holds: (of: { jump: number; mark: number }) => boolean,
): { pairs: number; held: number } {
  const counted = { pairs: 0, held: 0 };
  for (let reach = from; reach <= to; reach += step) {
    for (let jump = 0; jump <= highest; jump += step) {
      const seen = { standingReach: read(reach, unit), touchReach: read(reach + jump, unit) };
      counted.pairs += 1;
      if (holds({ jump, mark: heightOf(seen) })) counted.held += 1;
    }
  }
  return counted;
}

function read(number: number, unit: "cm" | "in") {
  const parsed = parseLength(String(number), unit);
  if (!("length" in parsed)) throw new Error(`not read: ${number} ${unit}`);
  return parsed.length;
}
