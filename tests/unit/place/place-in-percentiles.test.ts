import fc from "fast-check";
import { expect, test } from "vitest";
import { percentilesTold } from "../../../electron/domain/reference-table/table.ts";
import { endsOf, percentileRank } from "../../../electron/domain/statistics/place.ts";
import { placeInPercentiles } from "../../../electron/domain/statistics/place-in-percentiles.ts";
import { groupsOfMarks } from "./groups-of-marks.ts";

/** Told outward by bounds of a step: of sorted marks, the two between which the type-7 place lies. */
function toldOf(marks: readonly number[], step: number) {
  const sorted = marks.toSorted((a, b) => a - b);
  const percentiles = percentilesTold.map((percentile) => {
    const place = ((sorted.length - 1) * percentile) / 100;
    const below = sorted[Math.floor(place)] ?? 0;
    const above = sorted[Math.ceil(place)] ?? 0;
    return { percentile, low: Math.floor(below / step) * step, high: Math.floor(above / step) * step + step };
  });
  return { marks: marks.length, countsAs: marks.length, percentiles };
}

/** 5, 10, … 95 lie at 5, 10, … 95. */
const even = toldOf(
  Array.from({ length: 101 }, (_none, index) => index),
  1,
);

/**
 * By hand from the definition: of 101 marks 0 to 100 the 40th percentile is surely below 42, and the 45th surely above
 * it, so that 40 to 45 in 100 are worse. Wilson's interval (Wilson 1927) of 40.4 in 101 begins at 0.3098, that of 45.45
 * ends at 0.5472 (by the formula, in a calculator).
 */
test("a place is between the told percentiles around a mark, with Wilson's interval on top", () => {
  expect(placeInPercentiles("higher", 42, even)).toEqual({ n: 101, low: 30, high: 55 });
  expect(placeInPercentiles("lower", 58, even)).toEqual({ n: 101, low: 30, high: 55 });
});

test("it is as wide as for as many marks as the group counts for, and says how many there are", () => {
  const few = placeInPercentiles("higher", 42, { ...even, countsAs: 10 });
  expect(few).toMatchObject({ n: 101 });
  expect(few?.low).toBeLessThan(30);
  expect(few?.high).toBeGreaterThan(55);
  expect(placeInPercentiles("higher", 42, { ...even, marks: 19 })).toBeNull();
});

test("beyond the percentiles that are told nothing is known", () => {
  const some = { ...even, percentiles: even.percentiles.filter(({ percentile }) => percentile === 50) };
  expect(placeInPercentiles("higher", 40, some)).toMatchObject({ low: 0 });
  expect(placeInPercentiles("higher", 60, some)).toMatchObject({ high: 100 });
  expect(placeInPercentiles("higher", 50, some)).toMatchObject({ low: 0, high: 100 });
  const open = { ...even, percentiles: [{ percentile: 50, low: null, high: 50 }] };
  expect(placeInPercentiles("higher", 10, open)).toMatchObject({ low: 0, high: 100 });
});

test("the true ranks of the worst and of the best mark lie inside, whatever the group and the bounds", () => {
  fc.assert(
    fc.property(groupsOfMarks, ({ better, marks, step, value, reach, equalWithin }) => {
      const place = placeInPercentiles(better, value, toldOf(marks, step), equalWithin, reach);
      const [worst, best] = endsOf(better, value, reach).map((mark) =>
        percentileRank(better, mark, marks, equalWithin),
      );
      expect(place?.low).toBeLessThanOrEqual(worst ?? 0);
      expect(place?.high).toBeGreaterThanOrEqual(best ?? 100);
    }),
  );
});

test("a mirrored group gives the same place to a mirrored mark", () => {
  fc.assert(
    fc.property(groupsOfMarks, ({ marks, step, value, reach, equalWithin }) => {
      const told = toldOf(marks, step);
      const mirrored = told.percentiles
        .map(({ percentile, low, high }) => ({
          percentile: 100 - percentile,
          low: 501 - high,
          high: 501 - low,
        }))
        .reverse();
      const whole = Math.floor(reach);
      expect(
        placeInPercentiles("lower", 500 - value, { ...told, percentiles: mirrored }, equalWithin, whole),
      ).toEqual(placeInPercentiles("higher", value, told, equalWithin, whole));
    }),
  );
});
