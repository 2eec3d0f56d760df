import fc from "fast-check";
import { expect, test } from "vitest";
import { verdict } from "../../../electron/domain/statistics/change.ts";
import { noiseBand } from "../../../electron/domain/statistics/noise-band.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";

/** The level by one mark. */
const by = (value: number) => ({ value, variance: 1 });

test("the band holds exactly the marks whose verdict is noise", () => {
  const value = fc.integer({ min: 1, max: 500_000 });
  const share = fc.double({ min: 0, max: 0.4, noNaN: true });
  const fixed = fc.double({ min: 0.1, max: 3000, noNaN: true });
  const degrees = fc.option(fc.double({ min: 1, max: 100, noNaN: true }));
  fc.assert(
    fc.property(
      fc.constantFrom(...testCodes),
      value,
      value,
      share,
      fixed,
      degrees,
      (code, last, next, ...of) => {
        const [ofMark, always, known] = of;
        const error = {
          share: ofMark,
          fixed: always,
          degrees: known ?? 2,
          assumed: known === null,
          pairs: 0,
        };
        const { low, high } = noiseBand(code, by(last), error);
        // At an edge itself, rounding decides.
        fc.pre(Math.min(Math.abs(next - low), Math.abs(next - high)) > 1e-6 * last);
        if (low === 0 && next < high) return;
        expect(low < next && next < high).toBe(verdict(code, last, next, error) === "noise");
      },
    ),
    { numRuns: 2000 },
  );
});

test("the band of the starting typical errors", () => {
  // 0.8416 · √2 · √(1.5² + (0.066 · 18.8)²), the mean of 20 and 17.7, and of agility √(3.2² + (0.0214 · 120.4)²), by hand.
  expect(noiseBand("push-up", by(20)).low).toBeCloseTo(20 - 2.318, 2);
  expect(noiseBand("agility", by(118)).high).toBeCloseTo(118 + 4.888, 2);
  // Never below nothing.
  expect(noiseBand("push-up", by(1)).low).toBe(0);
});
