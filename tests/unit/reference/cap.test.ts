import fc from "fast-check";
import { expect, test } from "vitest";
import {
  capOf,
  countedUnder,
  weightUnder,
  wholeWeight,
} from "../../../electron/domain/reference-table/cap.ts";

const sizes = fc.array(fc.oneof(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 5000 })), {
  minLength: 1,
  maxLength: 12,
});

function capIn(halls: readonly number[]): number {
  const [largest = 0, second = 0] = halls.toSorted((a, b) => b - a);
  return capOf({ total: halls.reduce((sum, hall) => sum + hall, 0), largest, second });
}

const counted = (halls: readonly number[], cap: number) =>
  halls.reduce((sum, hall) => sum + Math.min(hall, cap), 0);

test("no hall counts for more than a third, and nothing larger would do: the rule's own words", () => {
  fc.assert(
    fc.property(sizes, (halls) => {
      const cap = capIn(halls);
      if (cap === Infinity) {
        expect(3 * Math.max(...halls)).toBeLessThanOrEqual(counted(halls, Infinity));
        return;
      }
      expect(3 * cap).toBeLessThanOrEqual(counted(halls, cap));
      const more = cap + 0.25;
      expect(3 * Math.min(more, Math.max(...halls))).toBeGreaterThan(counted(halls, more));
    }),
    { numRuns: 2000 },
  );
});

test("worked out by hand", () => {
  // 5,000 of one among 100 of others: it counts as 50. Two large ones beside 30: each as 30. Two halls: none has a third.
  expect(capIn([5000, 60, 40])).toBe(40);
  expect(capIn([5000, ...Array.from({ length: 20 }, () => 5)])).toBe(50);
  expect(capIn([400, 300, 10, 20])).toBe(30);
  expect(capIn([10, 10, 10])).toBe(Infinity);
  expect(capIn([12, 8, 5, 4])).toBe(8.5);
  expect(capIn([500, 20])).toBe(0);
  expect(weightUnder(8.5, 12)).toBe(708_333);
  expect(countedUnder(8.5, { total: 29, largest: 12, second: 8 })).toBe(25);
  expect(countedUnder(40, { total: 5100, largest: 5000, second: 60 })).toBe(120);
  expect(weightUnder(50, 50)).toBe(wholeWeight);
});
