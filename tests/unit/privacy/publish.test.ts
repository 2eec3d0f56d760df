import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/chance.ts";
import { contentsOf, publish, summarise } from "../../../electron/domain/privacy/publish.ts";
import type { ReleasedRow } from "../../../electron/domain/privacy/rule.ts";

const quasi = { ageBand: "20 to 24", category: "open", leagueSize: "not told", quarter: "2026-Q4" };

/** Leaps told as 10 cm from each lower bound (mm). */
function leaps(lows: readonly number[]): ReleasedRow[] {
  return lows.map((low, athlete) => ({
    ...{ athlete, quasi },
    marks: [{ test: "vertical", variant: "", low, high: low + 100 }],
  }));
}

test("a published row has nothing but what it may say", () => {
  const [row] = publish(leaps([400]), seededChance([1, 2, 3, 4]));
  expect(Object.keys(row ?? {}).sort()).toEqual(["id", "marks", "quasi"]);
  expect(row?.quasi).toEqual(quasi);
});

test("publishing loses no row and adds none", () => {
  fc.assert(
    fc.property(fc.array(fc.nat(50), { maxLength: 60 }), (lows) => {
      const rows = publish(leaps(lows), seededChance([5, 6, 7, 8]));
      const told = rows.map(({ marks: [mark] }) => mark?.low ?? -1);
      expect(told.sort((a, b) => a - b)).toEqual(lows.toSorted((a, b) => a - b));
      expect(new Set(rows.map(({ id }) => id)).size).toBe(lows.length);
    }),
  );
});

test("the order is drawn anew with each seed, and is not the order of the marks", () => {
  const lows = Array.from({ length: 40 }, (_none, index) => index);
  const orders = [1, 2, 3].map((part) =>
    publish(leaps(lows), seededChance([part, 2, 3, 4]))
      .map(({ marks: [mark] }) => mark?.low)
      .join(),
  );
  expect(new Set([...orders, lows.join(), lows.toReversed().join()]).size).toBe(5);
});

test("the same rows say the same, whoever they belong to and however they came", () => {
  const rows = leaps([100, 200, 300]);
  const others = rows.toReversed().map((row, index) => ({ ...row, athlete: 70 + index }));
  expect(contentsOf(others)).toBe(contentsOf(rows));
  expect(contentsOf(leaps([100, 200, 200]))).not.toBe(contentsOf(rows));
});

/*
 * Ten leaps: five under 30 cm, five from 50 on. Lower quartile: type 7 of ten lies at place 2.25 from 0, between the third and
 * the fourth: under 30. Median at 4.5, between the fifth and the sixth: one end and the other, so that nothing is told.
 */
test("nine marks have a count, ten have quartiles as well, as the intervals they lie in", () => {
  const end = (low: number | null, high: number | null, count: number): ReleasedRow[] =>
    Array.from({ length: count }, (_none, athlete) => ({
      ...{ athlete, quasi },
      marks: [{ test: "vertical", variant: "", low, high }],
    }));
  expect(summarise(end(null, 300, 9))).toEqual([{ test: "vertical", variant: "", n: 9, quartiles: null }]);
  expect(summarise([...end(500, null, 5), ...end(null, 300, 5)])).toEqual([
    {
      ...{ test: "vertical", variant: "", n: 10 },
      quartiles: {
        lower: { low: null, high: 300 },
        median: { low: null, high: null },
        upper: { low: 500, high: null },
      },
    },
  ]);
});

test("variants are summed up apart, in the order of the tests", () => {
  const of = (variant: string): ReleasedRow => ({
    ...{ athlete: 1, quasi },
    marks: [{ test: "push-up", variant, low: 10, high: 20 }],
  });
  const told = summarise([...leaps([400]), of("knee"), of("full"), of("full")]);
  expect(told.map(({ test: code, variant, n }) => [code, variant, n])).toEqual([
    ["push-up", "full", 2],
    ["push-up", "knee", 1],
    ["vertical", "", 1],
  ]);
});
