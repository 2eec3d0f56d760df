import fc from "fast-check";
import { expect, test } from "vitest";
import { capOf, countedUnder } from "../../../electron/domain/reference-table/cap.ts";

const sizes = fc.array(fc.oneof(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 5000 })), {
  minLength: 1,
  maxLength: 12,
});

function sizeIn(halls: readonly number[]) {
  const falling = halls.toSorted((a, b) => b - a);
  const [largest = 0, second = 0] = falling;
  const middle = falling.toReversed()[Math.ceil(halls.length / 2) - 1] ?? 0;
  return { middle, total: counted(halls, 3 * middle), largest, second };
}

const capIn = (halls: readonly number[]) => capOf(sizeIn(halls));

const counted = (halls: readonly number[], cap: number) =>
  halls.reduce((sum, hall) => sum + Math.min(hall, cap), 0);

test("no hall counts as more than three middle ones nor for more than a third, and nothing larger would do", () => {
  fc.assert(
    fc.property(sizes, (halls) => {
      const cap = capIn(halls);
      const { middle, largest } = sizeIn(halls);
      const most = Math.min(largest, 3 * middle);
      expect(cap).toBeLessThanOrEqual(3 * middle);
      expect(3 * Math.min(cap, most)).toBeLessThanOrEqual(counted(halls, cap));
      if (cap === 3 * middle) return;
      const more = cap + 0.25;
      expect(3 * Math.min(more, most)).toBeGreaterThan(counted(halls, more));
    }),
    { numRuns: 2000 },
  );
});

test("worked out by hand", () => {
  // 5,000 of one among twenty halls of five: it counts as three of them. Few halls: a third is less.
  expect(capIn([5000, ...Array.from({ length: 20 }, () => 5)])).toBe(15);
  expect(capIn([5000, 60, 40])).toBe(40);
  expect(capIn([400, 300, 10, 20])).toBe(30);
  expect(capIn([10, 10, 10])).toBe(30);
  expect(capIn([12, 8, 5, 4])).toBe(8.5);
  expect(capIn([500, 20])).toBe(0);
  expect(countedUnder(8.5, sizeIn([12, 8, 5, 4]))).toBe(25);
  expect(countedUnder(40, sizeIn([5000, 60, 40]))).toBe(120);
  expect(countedUnder(15, sizeIn([5000, ...Array.from({ length: 20 }, () => 5)]))).toBe(115);
});
