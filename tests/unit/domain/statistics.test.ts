import fc from "fast-check";
import { expect, test } from "vitest";
import {
  differsFromLast,
  gain,
  startingTypicalErrors,
  verdict,
} from "../../../electron/domain/statistics/change.ts";
import { normalQuantile, normalShare } from "../../../electron/domain/statistics/normal.ts";
import { standingOf } from "../../../electron/domain/statistics/standing.ts";
import { protocols, testCodes } from "../../../electron/domain/tests/registry.ts";

const codes = fc.constantFrom(...testCodes);
const values = fc.nat(1_000_000);

test("the normal distribution rises, is even, and comes back from its quantile", () => {
  fc.assert(
    fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (x) => {
      expect(normalShare(x) + normalShare(-x)).toBeCloseTo(1, 14);
      expect(normalShare(x + 0.001)).toBeGreaterThanOrEqual(normalShare(x));
      const share = normalShare(-Math.abs(x));
      expect(Math.abs(normalQuantile(share) + Math.abs(x))).toBeLessThan(1e-9);
    }),
  );
});

test("the way back turns a gain into the same loss", () => {
  const opposite = {
    noise: "noise",
    "likely gain": "likely loss",
    "likely loss": "likely gain",
    "clear gain": "clear loss",
    "clear loss": "clear gain",
  };
  fc.assert(
    fc.property(codes, values, values, (code, from, to) => {
      expect(verdict(code, to, from)).toBe(opposite[verdict(code, from, to)]);
      expect(differsFromLast(code, to, from)).toBe(differsFromLast(code, from, to));
    }),
  );
});

test("a verdict never contradicts the direction of the change", () => {
  fc.assert(
    fc.property(codes, values, values, (code, from, to) => {
      const change = gain(protocols[code].better, from, to);
      const said = verdict(code, from, to);
      if (said.endsWith("gain")) expect(change).toBeGreaterThan(0);
      if (said.endsWith("loss")) expect(change).toBeLessThan(0);
    }),
  );
});

test("every starting typical error says that it is assumed", () => {
  expect(testCodes.map((code) => startingTypicalErrors[code].assumed)).toEqual([
    true,
    true,
    true,
    true,
    true,
  ]);
});

// Common practice, no source: a first mark is no best, and a best is better than all before it.
test.each<["higher" | "lower", number, number[], string]>([
  ["higher", 20, [], "first"],
  ["higher", 21, [20, 18], "best"],
  ["higher", 20, [18, 20], "equal"],
  ["higher", 19, [20, 18], "below"],
  ["lower", 399_900, [400_000, 420_000], "best"],
  ["lower", 400_000, [400_000, 420_000], "equal"],
  ["lower", 410_000, [400_000, 420_000], "below"],
])("%s is better: %i after %j is %s", (better, value, earlier, expected) => {
  expect(standingOf(better, value, earlier)).toBe(expected);
});
