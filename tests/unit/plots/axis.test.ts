import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { valueRange, valueTicks, writeTick } from "../../../renderer/parts/plots/axis.ts";
import { dateRange, dateTicks, ticksBetween } from "../../../renderer/parts/plots/dates.ts";

describe("values", () => {
  test("ticks are steps that people count in", () => {
    expect(valueTicks("push-up", 17, 31, 5, "cm")).toEqual([20, 25, 30]);
    expect(valueTicks("agility", 108, 122, 5, "cm").map((tick) => writeTick("agility", tick, "cm"))).toEqual([
      "27",
      "28",
      "29",
      "30",
    ]);
    expect(
      valueTicks("vertical", 7900, 8900, 5, "cm").map((tick) => writeTick("vertical", tick, "cm")),
    ).toEqual(["40", "41", "42", "43", "44"]);
    expect(
      valueTicks("vertical", 7900, 8900, 5, "in").map((tick) => writeTick("vertical", tick, "in")),
    ).toEqual(["16", "17"]);
    expect(valueTicks("core", 100, 190, 5, "cm").map((tick) => writeTick("core", tick, "cm"))).toEqual([
      "2:00",
      "2:30",
      "3:00",
    ]);
    const circuit = valueTicks("endurance", 352_400, 412_300, 5, "cm");
    expect(circuit.map((tick) => writeTick("endurance", tick, "cm"))).toEqual([
      "6:00",
      "6:15",
      "6:30",
      "6:45",
    ]);
  });

  test("there are never more than asked for, in rising order and in range", () => {
    const range = fc.tuple(fc.integer({ min: 0, max: 4_000_000 }), fc.integer({ min: 1, max: 4_000_000 }));
    fc.assert(
      fc.property(fc.constantFrom(...testCodes), range, fc.constantFrom(3, 5), (code, [low, more], most) => {
        const ticks = valueTicks(code, low, low + more, most, "cm");
        expect(ticks.length).toBeLessThanOrEqual(most + 1);
        expect(ticks).toEqual([...ticks].sort((a, b) => a - b));
        for (const tick of ticks) {
          expect(tick).toBeGreaterThanOrEqual(low);
          expect(tick).toBeLessThanOrEqual(low + more);
        }
      }),
    );
  });

  test("all values lie inside the range, also a single one", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 4_000_000 }), { minLength: 1 }), (values) => {
        const { low, high } = valueRange(values);
        expect(low).toBeLessThan(Math.min(...values));
        expect(high).toBeGreaterThan(Math.max(...values));
      }),
    );
  });
});

describe("dates", () => {
  const told = (first: string, last: string, between = 3) =>
    dateTicks(first, last, between).map(({ at, form }) => `${at.toISOString().slice(0, 10)} ${form}`);

  test("one day is one tick", () => {
    expect(told("2026-11-14", "2026-11-14")).toEqual(["2026-11-14 day"]);
  });

  test("months between two tests, years between many", () => {
    expect(told("2026-03-14", "2026-11-14")).toEqual([
      "2026-03-14 day",
      "2026-11-14 day",
      "2026-07-01 month",
    ]);
    expect(told("2009-03-14", "2026-07-11")).toEqual([
      "2009-03-14 day",
      "2026-07-11 day",
      "2015-01-01 year",
      "2020-01-01 year",
    ]);
    expect(told("2026-11-01", "2026-11-14")).toEqual(["2026-11-01 day", "2026-11-14 day"]);
  });

  test("nothing stands between where nothing is asked for", () => {
    expect(told("2009-03-14", "2026-07-11", 0)).toEqual(["2009-03-14 day", "2026-07-11 day"]);
  });

  test("a narrow axis has fewer words, so that none runs into the next", () => {
    expect([220, 379, 380, 640, 900].map((width) => ticksBetween(width, 3))).toEqual([0, 0, 1, 2, 3]);
    expect(ticksBetween(900, 0)).toBe(0);
    // Words that long are at most so wide at the page's size: "May 2026" in figures of 8.9 px, and a gap.
    const widest = 9 * 8.9;
    fc.assert(
      fc.property(fc.integer({ min: 380, max: 2_000 }), (width) => {
        const between = ticksBetween(width, 3);
        expect((width * 0.5) / (between + 1)).toBeGreaterThan(widest);
      }),
    );
  });

  test("the range holds both days with room, also of one day", () => {
    for (const [first, last] of [
      ["2026-11-14", "2026-11-14"],
      ["2009-03-14", "2026-07-11"],
    ] as const) {
      const [start, end] = dateRange(first, last);
      expect(start.getTime()).toBeLessThan(Date.parse(first));
      expect(end.getTime()).toBeGreaterThan(Date.parse(last));
    }
  });
});
