import fc from "fast-check";
import { expect, test } from "vitest";
import { intraclass, type Model } from "../../../electron/domain/statistics/agreement.ts";
import { blend } from "../../../electron/domain/statistics/blend.ts";
import { startingTypicalErrors, verdict } from "../../../electron/domain/statistics/change.ts";
import {
  type Estimate,
  type Pair,
  typicalErrorInterval,
  typicalErrorOf,
  typicalShareOf,
} from "../../../electron/domain/statistics/reliability.ts";
import { firstMarkJudged } from "../../../electron/domain/statistics/threshold.ts";
import { twoWay } from "../../../electron/domain/statistics/two-way.ts";
import { definitionOf, testCodes } from "../../../electron/domain/tests/registry.ts";

const mark = fc.integer({ min: 1, max: 1000 });
const pairs = fc.array(fc.tuple(mark, mark), { minLength: 2, maxLength: 40 });
const models: readonly Model[] = [1, 2, 3];

test("what everybody gains is no noise, and neither does the order of the two tests matter", () => {
  fc.assert(
    fc.property(pairs, fc.integer({ min: -50, max: 50 }), (some, gained) => {
      const error = typicalErrorOf(some)?.amount ?? Number.NaN;
      const later = some.map(([before, after]): Pair => [before, after + gained]);
      const turned = some.map(([before, after]): Pair => [after, before]);
      expect(typicalErrorOf(later)?.amount).toBeCloseTo(error, 9);
      expect(typicalErrorOf(turned)?.amount).toBeCloseTo(error, 9);
    }),
  );
});

test("a share does not depend on the unit, nor on how good an athlete is", () => {
  fc.assert(
    fc.property(pairs, fc.integer({ min: 1, max: 1000 }), (some, times) => {
      const error = typicalShareOf(some)?.amount ?? Number.NaN;
      const larger = some.map(([before, after], index): Pair => {
        const own = index % 2 === 0 ? times : 1;
        return [own * before, own * after];
      });
      expect(typicalShareOf(larger)?.amount).toBeCloseTo(error, 9);
    }),
  );
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
  .map((some): Estimate => ({ ...some, pairs: some.degrees + 1, meanChange: 0 }));

test("a blend lies between its parts, and nearer to the pairs the more there are", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 50, noNaN: true }), estimate, (starting, own) => {
      const { amount, degrees } = blend(starting, own, null);
      expect(amount).toBeGreaterThanOrEqual(Math.min(starting, own.amount) - 1e-9);
      expect(amount).toBeLessThanOrEqual(Math.max(starting, own.amount) + 1e-9);
      expect(degrees).toBeGreaterThan(own.degrees);
      const more = blend(starting, { ...own, degrees: 2 * own.degrees }, null);
      expect(Math.abs(more.amount - own.amount)).toBeLessThanOrEqual(Math.abs(amount - own.amount) + 1e-9);
    }),
  );
});

test("trials within a day that are all but equal raise nothing by a rounding", () => {
  const [amount, degrees] = [0.010_000_000_000_000_007, 2];
  const trials = { amount: 0.010_000_000_000_000_009, degrees: 1, pairs: 2, meanChange: 0 };
  expect(blend(amount, null, trials)).toEqual({ amount, degrees, raised: false });
});

test("trials within a day never make noise look smaller", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      fc.option(estimate),
      estimate,
      (starting, own, trials) => {
        const without = blend(starting, own, null);
        const withTrials = blend(starting, own, trials);
        expect(withTrials.amount).toBeGreaterThanOrEqual(without.amount);
        expect(withTrials.raised).toBe(withTrials.amount > without.amount);
        if (!withTrials.raised) expect(withTrials).toEqual(without);
      },
    ),
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
        const from = size * reading;
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
  const error = { ...startingTypicalErrors.endurance, amount: 0.9 };
  expect(firstMarkJudged("endurance", 300_000, "clear gain", error, "cm")).toBeNull();
});

test("a leap is clear from a height that the tape of the hall can show, whatever the middle of a day's marks is", () => {
  // 40.5 cm, typical error 4 %: 1.96 · √2 · 4 % of the mean is passed at 45.25 cm or 17.82 in, so at the next reading.
  const from = (grains: number, lengths: "cm" | "in") =>
    firstMarkJudged("vertical", grains, "clear gain", startingTypicalErrors.vertical, lengths);
  expect([from(8100, "cm"), from(8100, "in")]).toEqual([45.5 * 200, 18 * 508]);
  expect(from(8133, "cm")).toBe(45.5 * 200);
});
