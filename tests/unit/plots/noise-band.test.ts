import fc from "fast-check";
import { expect, test } from "vitest";
import { startingTypicalErrors, verdict } from "../../../electron/domain/statistics/change.ts";
import { noiseBand } from "../../../electron/domain/statistics/noise-band.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";

test("the band holds exactly the marks whose verdict is noise", () => {
  const value = fc.integer({ min: 1, max: 500_000 });
  const share = fc.double({ min: 0.005, max: 0.4, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom(...testCodes), value, value, share, (code, last, next, amount) => {
      const start = startingTypicalErrors[code];
      const error = { ...start, amount: start.kind === "grains" ? amount * 30 : amount };
      const { low, high } = noiseBand(code, last, error);
      // At an edge itself, rounding decides.
      fc.pre(Math.min(Math.abs(next - low), Math.abs(next - high)) > 1e-6 * last);
      expect(low < next && next < high).toBe(verdict(code, last, next, error) === "noise");
    }),
    { numRuns: 2000 },
  );
});

test("the band of the starting typical errors", () => {
  // 0.8416 · √2 · 2 reps and · 1 landing, by hand.
  expect(noiseBand("push-up", 20).low).toBeCloseTo(20 - 2.3805, 4);
  expect(noiseBand("agility", 118).high).toBeCloseTo(118 + 4.761, 3);
  // Never below nothing.
  expect(noiseBand("push-up", 1).low).toBe(0);
});
