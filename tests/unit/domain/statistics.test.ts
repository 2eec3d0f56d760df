import fc from "fast-check";
import { expect, test } from "vitest";
import {
  differsFromLast,
  gain,
  startingTypicalErrors,
  verdict,
} from "../../../electron/domain/statistics/change.ts";
import { normalQuantile, normalShare } from "../../../electron/domain/statistics/normal.ts";
import { ranksOf, standingOf } from "../../../electron/domain/statistics/standing.ts";
import { protocols, testCodes } from "../../../electron/domain/tests/registry.ts";

const codes = fc.constantFrom(...testCodes);
const values = fc.nat(1_000_000);
const directions = fc.constantFrom("higher" as const, "lower" as const);

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

test("a mark is a best exactly when it takes the first place alone", () => {
  fc.assert(
    fc.property(directions, fc.nat(9), fc.array(fc.nat(9), { minLength: 1 }), (better, value, earlier) => {
      const [place, ...others] = ranksOf([value, ...earlier], better);
      const alone = place === 1 && others.every((other) => other > 1);
      expect(standingOf(better, value, earlier) === "best").toBe(alone);
      expect(standingOf(better, value, earlier) === "below").toBe(place !== 1);
    }),
  );
});

test("places agree with counting in a sorted list", () => {
  fc.assert(
    fc.property(directions, fc.array(fc.nat(20)), (better, marks) => {
      const sorted = [...marks].sort((a, b) => (better === "higher" ? b - a : a - b));
      expect(ranksOf(marks, better)).toEqual(marks.map((mark) => sorted.indexOf(mark) + 1));
    }),
  );
});
