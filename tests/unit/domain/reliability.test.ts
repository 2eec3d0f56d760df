import fc from "fast-check";
import { expect, test } from "vitest";
import { intraclass, type Model } from "../../../electron/domain/statistics/agreement.ts";
import { blend } from "../../../electron/domain/statistics/blend.ts";
import { startingTypicalErrors, verdict } from "../../../electron/domain/statistics/change.ts";
import { typicalErrorInterval } from "../../../electron/domain/statistics/reliability.ts";
import { type Estimate, errorOfRepeats, runsOf } from "../../../electron/domain/statistics/repeats.ts";
import { firstMarkJudged } from "../../../electron/domain/statistics/threshold.ts";
import { twoWay } from "../../../electron/domain/statistics/two-way.ts";
import { definitionOf, testCodes } from "../../../electron/domain/tests/registry.ts";

type Pair = readonly [before: number, after: number];
const mark = fc.integer({ min: 1, max: 1000 });
const pairs = fc.array(fc.tuple(mark, mark), { minLength: 2, maxLength: 40 });
const models: readonly Model[] = [1, 2, 3];

function amountOf(some: readonly Pair[], unit = { fixed: 1, share: 0 }): number {
  const runs = some.map((pair) => pair.map((value, at) => ({ visit: at + 1, value })));
  return errorOfRepeats(runs, unit)?.amount ?? Number.NaN;
}

test("what everybody gains is no noise, and neither does the order of the two tests matter", () => {
  fc.assert(
    fc.property(pairs, fc.integer({ min: -50, max: 50 }), (some, gained) => {
      const later = some.map(([before, after]): Pair => [before, after + gained]);
      const turned = some.map(([before, after]): Pair => [after, before]);
      expect(amountOf(later)).toBeCloseTo(amountOf(some), 9);
      expect(amountOf(turned)).toBeCloseTo(amountOf(some), 9);
    }),
  );
});

test("a share does not depend on the unit, nor on how good an athlete is", () => {
  fc.assert(
    fc.property(pairs, fc.integer({ min: 1, max: 1000 }), (some, times) => {
      const share = { fixed: 0, share: 0.05 };
      const larger = some.map(([before, after], index): Pair => {
        const own = index % 2 === 0 ? times : 1;
        return [own * before, own * after];
      });
      expect(amountOf(larger, share)).toBeCloseTo(amountOf(some, share), 9);
    }),
  );
});

test("repeats are neighbours at most 14 days apart, in runs of at most 28, and remember which visit they were", () => {
  const on = (...days: number[]) => days.map((day) => ({ day, value: day }));
  expect(runsOf(on(0, 14, 28, 42)).map((run) => run.map(({ visit }) => visit))).toEqual([[1, 2, 3]]);
  expect(runsOf(on(0, 100, 110, 125))).toEqual([
    [
      { visit: 2, value: 100 },
      { visit: 3, value: 110 },
    ],
  ]);
  expect(runsOf(on(0, 10, 20, 30, 40))).toHaveLength(2);
  expect(runsOf([])).toEqual([]);
});

test("an interval holds its estimate and closes with the degrees of freedom", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 100, noNaN: true }),
      fc.integer({ min: 1, max: 200 }),
      (amount, degrees) => {
        const { low, high } = typicalErrorInterval(amount, degrees);
        expect(low).toBeLessThan(amount);
        expect(high).toBeGreaterThan(amount);
        const more = typicalErrorInterval(amount, degrees + 20);
        expect(more.high - more.low).toBeLessThan(high - low);
      },
    ),
  );
});

test("an intraclass correlation lies in its interval, at most 1, whatever the unit", () => {
  const table = fc
    .integer({ min: 2, max: 4 })
    .chain((columns) =>
      fc.array(fc.array(mark, { minLength: columns, maxLength: columns }), { minLength: 3, maxLength: 20 }),
    );
  fc.assert(
    fc.property(table, (rows) => {
      const inches = twoWay(rows.map((row) => row.map((value) => value / 2.54 + 7)));
      for (const model of models) {
        const icc = intraclass(twoWay(rows), model, "single");
        if (icc === null) continue;
        expect(icc.value).toBeLessThanOrEqual(1);
        expect(icc.low).toBeLessThanOrEqual(icc.value + 1e-9);
        expect(icc.high).toBeGreaterThanOrEqual(icc.value - 1e-9);
        expect(intraclass(inches, model, "single")?.value).toBeCloseTo(icc.value, 6);
      }
    }),
  );
});

test("a correlation below zero still has an interval", () => {
  const icc = intraclass(
    twoWay([
      [11, 3],
      [11, 7],
      [7, 9],
    ]),
    2,
    "single",
  );
  expect(icc?.value).toBeCloseTo(-0.615385, 6);
  expect(icc?.low).toBeLessThan(-0.615385);
  expect(icc?.high).toBeGreaterThan(-0.615385);
  expect(Number.isFinite(icc?.low)).toBe(true);
});

test("consistency does not mind what everybody gained", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(mark, mark), { minLength: 3, maxLength: 20 }), (rows) => {
      const gained = rows.map(([before, after]) => [before, after + 500]);
      const [plain, moved] = [twoWay(rows), twoWay(gained)];
      const of = (table: typeof plain, model: Model) => intraclass(table, model, "single")?.value ?? 0;
      expect(of(moved, 3)).toBeCloseTo(of(plain, 3), 9);
    }),
  );
});

const estimate = fc
  .record({
    amount: fc.double({ min: 0.01, max: 50, noNaN: true }),
    degrees: fc.integer({ min: 1, max: 200 }),
  })
  .map((some): Estimate => ({ ...some, pairs: some.degrees + 1 }));
const start = { ...startingTypicalErrors.core, fixed: 3, share: 0.05 };

test("a blend lies between its parts, and nearer to the pairs the more there are", () => {
  fc.assert(
    fc.property(estimate, (own) => {
      const { error } = blend(start, own, null);
      const amount = error.fixed / start.fixed;
      expect(error.share / start.share).toBeCloseTo(amount, 9);
      expect(amount).toBeGreaterThanOrEqual(Math.min(1, own.amount) - 1e-9);
      expect(amount).toBeLessThanOrEqual(Math.max(1, own.amount) + 1e-9);
      expect(error.degrees).toBeGreaterThanOrEqual(own.degrees);
      const more = blend(start, { ...own, degrees: 2 * own.degrees }, null).error.fixed / start.fixed;
      expect(Math.abs(more - own.amount)).toBeLessThanOrEqual(Math.abs(amount - own.amount) + 1e-9);
    }),
  );
});

test("trials within a day that are all but equal raise nothing by a rounding", () => {
  const trials = { amount: 1 + 2e-16, degrees: 1, pairs: 2 };
  expect(blend(start, null, trials)).toEqual({ error: start, raised: false });
});

test("trials within a day never make noise look smaller", () => {
  fc.assert(
    fc.property(fc.option(estimate), estimate, (own, trials) => {
      const without = blend(start, own, null);
      const withTrials = blend(start, own, trials);
      expect(withTrials.error.fixed).toBeGreaterThanOrEqual(without.error.fixed);
      expect(withTrials.raised).toBe(withTrials.error.fixed > without.error.fixed);
      if (!withTrials.raised) expect(withTrials).toEqual(without);
    }),
  );
});

test("the first mark that is judged so is, and the one before it is not", () => {
  const codes = fc.constantFrom(...testCodes);
  const tapes = fc.constantFrom("cm" as const, "in" as const);
  fc.assert(
    fc.property(
      codes,
      fc.integer({ min: 50, max: 4000 }),
      fc.boolean(),
      tapes,
      (code, size, clear, lengths) => {
        const { figures, protocol } = definitionOf(code);
        const reading = figures.reading(lengths);
        // A circuit of a few seconds would have no room: its watch alone varies by two.
        const from = (code === "endurance" ? size + 150 : size) * reading;
        const wanted = clear ? "clear gain" : "likely gain";
        const error = startingTypicalErrors[code];
        const found = firstMarkJudged(code, from, wanted, error, lengths);
        if (found === null) throw new Error("the starting errors leave room for a gain");
        expect(found % reading).toBe(0);
        const back = protocol.better === "lower" ? reading : -reading;
        expect([wanted, "clear gain"]).toContain(verdict(code, from, found, error));
        expect([wanted, "clear gain"]).not.toContain(verdict(code, from, found + back, error));
      },
    ),
  );
});

test("noise as large as the mark leaves no room for a clear gain", () => {
  const error = { ...startingTypicalErrors.endurance, share: 0.9 };
  expect(firstMarkJudged("endurance", 300_000, "clear gain", error, "cm")).toBeNull();
});

test("a leap is clear from a height that the tape of the hall can show, whatever the middle of a day's marks is", () => {
  // 40.5 cm: 1.96 · √2 · √(1² + (0.0312 · 42.8)²) = 4.63 cm is passed at 45.13 cm or 17.77 in, so at the next reading.
  const from = (grains: number, lengths: "cm" | "in") =>
    firstMarkJudged("vertical", grains, "clear gain", startingTypicalErrors.vertical, lengths);
  expect([from(8100, "cm"), from(8100, "in")]).toEqual([45.5 * 200, 18 * 508]);
  expect(from(8133, "cm")).toBe(45.5 * 200);
});
