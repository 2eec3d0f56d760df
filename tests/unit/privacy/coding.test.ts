import fc from "fast-check";
import { expect, test } from "vitest";
import {
  codingsOf,
  intervalOf,
  lossOfInterval,
  partNumber,
  partsOf,
} from "../../../electron/domain/privacy/coding.ts";
import { ladders } from "../../../electron/domain/privacy/ladder.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";

const steps = ladders.vertical.steps;

test("a leap of 46 cm in steps of 5 cm from 30 to 50 is told as 45 to 50; the ends have one bound", () => {
  const coding = { step: 1000, below: 6000, from: 10_000 };
  expect(intervalOf(9200, coding)).toEqual({ low: 9000, high: 10_000 });
  expect(intervalOf(9000, coding)).toEqual({ low: 9000, high: 10_000 });
  expect(intervalOf(8999, coding)).toEqual({ low: 8000, high: 9000 });
  expect(intervalOf(5999, coding)).toEqual({ low: null, high: 6000 });
  expect(intervalOf(10_000, coding)).toEqual({ low: 10_000, high: null });
  expect(partsOf(coding)).toBe(6);
});

// The usual range of a leap is 100 to 750 mm: 50 of 650 are 76.9 thousandths, 100 to 300 are 307.7.
test("what an interval loses is its share of the usual range", () => {
  expect(lossOfInterval({ low: 9000, high: 10_000 }, ladders.vertical.usual)).toBe(77);
  expect(lossOfInterval({ low: null, high: 6000 }, ladders.vertical.usual)).toBe(308);
  expect(lossOfInterval({ low: null, high: 1200 }, ladders.vertical.usual)).toBe(0);
});

const heights = fc.array(
  fc.integer({ min: 0, max: 800 }).map((mm) => 20 * mm),
  { minLength: 1, maxLength: 30 },
);

test("every coding puts each mark in one part that holds it, with marks in both ends, on lines of its step", () => {
  fc.assert(
    fc.property(heights, (values) => {
      for (const coding of codingsOf(values, steps)) {
        const { step, below, from } = coding;
        expect(steps).toContain(step);
        expect([below % step, from % step, from >= below]).toEqual([0, 0, true]);
        const parts = values.map((value) => partNumber(value, coding));
        expect([Math.min(...parts), Math.max(...parts)]).toEqual([0, partsOf(coding) - 1]);
        for (const value of values) {
          const { low, high } = intervalOf(value, coding);
          expect((low === null || low <= value) && (high === null || value < high)).toBe(true);
        }
        const intervals = new Map(
          values.map((value) => [partNumber(value, coding), intervalOf(value, coding)]),
        );
        expect(new Set([...intervals.values()].map((each) => JSON.stringify(each))).size).toBe(
          intervals.size,
        );
      }
    }),
    { numRuns: 30 },
  );
});

test("no two codings say the same", () => {
  fc.assert(
    fc.property(heights, (values) => {
      const said = codingsOf(values, steps).map((coding) => {
        const lines = Array.from({ length: 900 }, (_none, mm) => JSON.stringify(intervalOf(20 * mm, coding)));
        return [...new Set(lines)].join();
      });
      expect(new Set(said).size).toBe(said.length);
    }),
    { numRuns: 8 },
  );
});

test("marks that are all alike can't be told: there is no coding with two ends", () => {
  expect(codingsOf([8200, 8200, 8240], steps)).toEqual([]);
});

test("every ladder goes from fine to coarse, in whole grains, within its usual range", () => {
  for (const code of testCodes) {
    const { steps: all, profileStep, usual } = ladders[code];
    expect(all.toSorted((a, b) => a - b)).toEqual(all);
    expect([...all, profileStep].every((step) => Number.isInteger(step) && step > 0)).toBe(true);
    expect(usual[0]).toBeLessThan(usual[1]);
  }
});
