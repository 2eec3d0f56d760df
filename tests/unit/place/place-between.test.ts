import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leastToCompare, percentileRank, placeAmong } from "../../../electron/domain/statistics/place.ts";
import {
  type AlikeInterval,
  leftOpen,
  placeBetween,
  standingAmong,
  widthOfPlace,
} from "../../../electron/domain/statistics/place-between.ts";

const values = fc.array(fc.integer({ min: 0, max: 300 }), { minLength: leastToCompare, maxLength: 60 });
const value = fc.integer({ min: 0, max: 300 });
const way = fc.constantFrom("higher" as const, "lower" as const);
const within = fc.constantFrom(0, 1);
const coding = fc.record({
  step: fc.constantFrom(1, 2, 5, 20, 50),
  below: fc.integer({ min: 0, max: 100 }),
  from: fc.integer({ min: 100, max: 300 }),
});

const exactly = (mark: number): AlikeInterval => ({ low: mark, high: mark + 1, count: 1 });

/** A mark as a bundle tells it: in steps, with both ends open. */
function told(
  mark: number,
  { step, below, from }: { step: number; below: number; from: number },
): AlikeInterval {
  const [first, last] = [Math.floor(below / step) * step, Math.floor(from / step) * step];
  if (mark < first) return { low: null, high: first, count: 1 };
  if (mark >= last) return { low: last, high: null, count: 1 };
  const low = Math.floor(mark / step) * step;
  return { low, high: low + step, count: 1 };
}

describe("a place among intervals", () => {
  test("worked out by hand: 30 surely below, 40 that could be either, 30 above", () => {
    const others = [
      { low: null, high: 10, count: 30 },
      { low: 10, high: 20, count: 40 },
      { low: 20, high: null, count: 30 },
    ];
    expect(standingAmong("higher", 15, others)).toEqual({ n: 100, worse: 30, equal: 0, unsure: 40 });
    expect(standingAmong("lower", 15, others)).toEqual({ n: 100, worse: 30, equal: 0, unsure: 40 });
    // 20 is not in the middle part any more, and 9 is the last of the lowest.
    expect(standingAmong("higher", 20, others)).toEqual({ n: 100, worse: 70, equal: 0, unsure: 30 });
    expect(standingAmong("higher", 9, others)).toEqual({ n: 100, worse: 0, equal: 0, unsure: 30 });
    expect(placeBetween("higher", 15, others)).toEqual({ n: 100, low: 21, high: 79 });
  });

  test("of marks known to the grain is the place among exact marks", () => {
    fc.assert(
      fc.property(way, value, values, within, (better, mark, others, equalWithin) => {
        expect(placeBetween(better, mark, others.map(exactly), equalWithin)).toEqual(
          placeAmong(better, mark, others, equalWithin),
        );
      }),
    );
  });

  test("holds the exact place and the mid-rank, however coarsely the others are told", () => {
    fc.assert(
      fc.property(way, value, values, within, coding, (better, mark, others, equalWithin, coarse) => {
        const intervals = others.map((each) => told(each, coarse));
        const place = placeBetween(better, mark, intervals, equalWithin);
        const exact = placeAmong(better, mark, others, equalWithin);
        expect(place?.low).toBeLessThanOrEqual(exact?.low ?? Number.NaN);
        expect(place?.high).toBeGreaterThanOrEqual(exact?.high ?? Number.NaN);
        const { n, worse, equal, unsure } = standingAmong(better, mark, intervals, equalWithin);
        const middle = (100 * (worse + (equal + unsure) / 2)) / n;
        expect(middle).toBeGreaterThanOrEqual(place?.low ?? Number.NaN);
        expect(middle).toBeLessThanOrEqual(place?.high ?? Number.NaN);
        const rank = percentileRank(better, mark, others, equalWithin);
        expect(rank).toBeGreaterThanOrEqual((100 * (worse + equal / 2)) / n - 1e-9);
        expect(rank).toBeLessThanOrEqual((100 * (worse + unsure + equal / 2)) / n + 1e-9);
      }),
    );
  });

  test("is none of nineteen, however they are counted", () => {
    expect(placeBetween("higher", 1, [{ low: 0, high: 5, count: 19 }])).toBeNull();
    expect(placeBetween("higher", 1, [{ low: 0, high: 5, count: 20 }])).not.toBeNull();
  });
});

describe("what the bounds leave open", () => {
  test("is nothing of exact marks, and the largest overlap of others", () => {
    expect(leftOpen([exactly(1), exactly(1), exactly(2)])).toBe(0);
    expect(leftOpen([])).toBe(0);
    const halves = [
      { low: null, high: 20, count: 3 },
      { low: 20, high: null, count: 7 },
    ];
    expect(leftOpen(halves)).toBe(0.7);
    expect(leftOpen([...halves, { low: 10, high: 30, count: 10 }])).toBe(0.85);
  });

  test("is at least what any one mark leaves unsure", () => {
    fc.assert(
      fc.property(value, values, coding, (mark, others, coarse) => {
        const intervals = others.map((each) => told(each, coarse));
        expect(standingAmong("higher", mark, intervals).unsure / others.length).toBeLessThanOrEqual(
          leftOpen(intervals) + 1e-9,
        );
      }),
    );
  });

  test("makes a group say less, as fewer marks do", () => {
    expect(widthOfPlace(30, 0)).toBeLessThan(widthOfPlace(600, 0.5));
    expect(widthOfPlace(600, 0.1)).toBeLessThan(widthOfPlace(30, 0));
  });
});
