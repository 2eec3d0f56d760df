import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/privacy/chance.ts";
import { publish, summarise } from "../../../electron/domain/privacy/publish.ts";
import type { Kept } from "../../../electron/domain/privacy/rule.ts";

function leaps(values: readonly number[]): Kept[] {
  const alike = {
    test: "vertical",
    variant: "",
    ageBand: "20 to 24",
    category: "open",
    quarter: "2026-Q4",
  } as const;
  return values.map((value, athlete) => ({ athlete, ...alike, value }));
}

test("a published row has nothing but what it may say", () => {
  const [row] = publish(leaps([430]), seededChance([1, 2, 3, 4]));
  expect(Object.keys(row ?? {}).sort()).toEqual(
    ["ageBand", "category", "id", "quarter", "test", "value", "variant"].sort(),
  );
});

test("publishing loses no row and adds none", () => {
  fc.assert(
    fc.property(fc.array(fc.nat(50), { maxLength: 60 }), (values) => {
      const rows = publish(leaps(values), seededChance([5, 6, 7, 8]));
      expect(rows.map(({ value }) => value).sort((a, b) => a - b)).toEqual(values.toSorted((a, b) => a - b));
      expect(new Set(rows.map(({ id }) => id)).size).toBe(values.length);
    }),
  );
});

test("the order is drawn anew with each seed, and is not the order of the marks", () => {
  const values = Array.from({ length: 40 }, (_none, index) => index);
  const orders = [1, 2, 3].map((part) =>
    publish(leaps(values), seededChance([part, 2, 3, 4]))
      .map(({ value }) => value)
      .join(),
  );
  expect(new Set([...orders, values.join(), values.toReversed().join()]).size).toBe(5);
});

test("nine rows have a count, ten have quartiles as well", () => {
  const nine = leaps([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  expect(summarise(nine)).toEqual([{ test: "vertical", variant: "", n: 9, quartiles: null }]);
  expect(summarise([...nine, ...leaps([10])])).toEqual([
    { test: "vertical", variant: "", n: 10, quartiles: { lower: 3.25, median: 5.5, upper: 7.75 } },
  ]);
});

test("variants are summed up apart, in the order of the tests", () => {
  const full = leaps([20]).map((row) => ({ ...row, test: "push-up" as const, variant: "full" }));
  const knee = full.map((row) => ({ ...row, variant: "knee" }));
  const told = summarise([...leaps([430]), ...knee, ...full, ...full]);
  expect(told.map(({ test, variant, n }) => [test, variant, n])).toEqual([
    ["push-up", "full", 2],
    ["push-up", "knee", 1],
    ["vertical", "", 1],
  ]);
});
