import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inOrder, together } from "../../../electron/domain/statistics/marks-in-order.ts";
import {
  leastToCompare,
  percentileRank,
  placeAmong,
  wilsonInterval,
} from "../../../electron/domain/statistics/place.ts";

const marks = fc.array(fc.integer({ min: 0, max: 400 }), { minLength: leastToCompare, maxLength: 60 });
const value = fc.integer({ min: 0, max: 400 });
const way = fc.constantFrom("higher" as const, "lower" as const);

describe("the percentile rank", () => {
  test("is from 0 to 100, and the two ways of counting mirror each other", () => {
    fc.assert(
      fc.property(marks, value, (some, one) => {
        const up = percentileRank("higher", one, some);
        expect(up).toBeGreaterThanOrEqual(0);
        expect(up).toBeLessThanOrEqual(100);
        expect(up + percentileRank("lower", one, some)).toBeCloseTo(100, 9);
      }),
    );
  });

  test("never falls when the mark gets better", () => {
    fc.assert(
      fc.property(marks, value, value, (some, one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(percentileRank("higher", more, some)).toBeGreaterThanOrEqual(
          percentileRank("higher", less, some),
        );
      }),
    );
  });

  test("does not depend on the order of the others", () => {
    fc.assert(
      fc.property(way, marks, value, (better, some, one) => {
        expect(percentileRank(better, one, some.toReversed())).toBe(percentileRank(better, one, some));
      }),
    );
  });

  test("counts heights a millimetre apart as equal where the test does", () => {
    expect(percentileRank("higher", 450, [449, 451, 450, 460], 1)).toBeCloseTo(37.5, 12);
    expect(percentileRank("higher", 450, [449, 451, 450, 460])).toBeCloseTo(37.5, 12);
    expect(percentileRank("higher", 450, [449, 440, 450, 460], 1)).toBeCloseTo(50, 12);
  });

  test("needs somebody to compare with", () => {
    expect(() => percentileRank("higher", 1, [])).toThrow(RangeError);
  });
});

/** By the definition: each mark is looked at. */
function plainRank(better: "higher" | "lower", own: number, some: readonly number[], equalWithin: number) {
  const gains = some.map((mark) => (better === "higher" ? own - mark : mark - own));
  const worse = gains.filter((gained) => gained > equalWithin).length;
  const equal = gains.filter((gained) => Math.abs(gained) <= equalWithin).length;
  return (100 * (worse + equal / 2)) / some.length;
}

describe("marks that were put in order", () => {
  test("rank as each mark by itself would", () => {
    fc.assert(
      fc.property(way, marks, value, fc.nat(3), (better, some, one, equalWithin) => {
        expect(percentileRank(better, one, inOrder(some), equalWithin)).toBeCloseTo(
          plainRank(better, one, some, equalWithin),
          9,
        );
      }),
    );
  });

  test("are taken together and apart as lists would be", () => {
    fc.assert(
      fc.property(way, marks, marks, fc.nat(10), value, (better, some, more, gone, one) => {
        const [apart, rest] = [some.slice(0, gone), some.slice(gone)];
        const orders = together([inOrder(some), inOrder(more)], [inOrder(apart)]);
        expect(orders.n).toBe(rest.length + more.length);
        expect(percentileRank(better, one, orders, 1)).toBeCloseTo(
          plainRank(better, one, [...rest, ...more], 1),
          9,
        );
      }),
    );
  });
});

describe("the band", () => {
  test("of fewer than twenty is none, of twenty there is one", () => {
    const nineteen = Array.from({ length: 19 }, (_, index) => index);
    expect(placeAmong("higher", 5, nineteen)).toBeNull();
    // 5 worse and one equal are 5.5 of 20; Wilson 0.1284 to 0.4941, worked out apart.
    expect(placeAmong("higher", 5, [...nineteen, 19])).toEqual({ n: 20, low: 12, high: 50 });
  });

  test("is of whole numbers that hold the rank, and never narrower than the interval", () => {
    fc.assert(
      fc.property(way, marks, value, (better, some, one) => {
        const band = placeAmong(better, one, some);
        if (band === null) throw new Error("There were enough to compare with.");
        const rank = percentileRank(better, one, some);
        const interval = wilsonInterval((rank / 100) * some.length, some.length);
        expect(Number.isInteger(band.low) && Number.isInteger(band.high)).toBe(true);
        expect(band.low).toBeLessThanOrEqual(interval.low * 100);
        expect(band.high).toBeGreaterThanOrEqual(interval.high * 100);
        expect(band.low).toBeGreaterThanOrEqual(0);
        expect(band.high).toBeLessThanOrEqual(100);
        expect(band.low).toBeLessThanOrEqual(rank);
        expect(band.high).toBeGreaterThanOrEqual(rank - 1e-9);
      }),
    );
  });

  test("gets narrower with more marks to compare with", () => {
    const twenty = Array.from({ length: 20 }, (_, index) => index);
    const width = (times: number) => {
      const band = placeAmong("higher", 9.5, Array.from({ length: times }, () => twenty).flat());
      return (band?.high ?? 0) - (band?.low ?? 0);
    };
    expect(width(10)).toBeLessThan(width(1) / 2);
  });
});

test("a share outside its whole is refused", () => {
  expect(() => wilsonInterval(1, 0)).toThrow(RangeError);
  expect(() => wilsonInterval(-1, 10)).toThrow(RangeError);
  expect(() => wilsonInterval(11, 10)).toThrow(RangeError);
  expect(() => wilsonInterval(Number.NaN, 10)).toThrow(RangeError);
});
