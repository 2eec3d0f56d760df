import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/privacy/chance.ts";
import { plainRule } from "../../../electron/domain/privacy/plain-rule.ts";
import { publish } from "../../../electron/domain/privacy/publish.ts";
import type { Candidate } from "../../../electron/domain/privacy/rule.ts";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { countClasses } from "./counter.ts";
import { halls } from "./hall.ts";

const protect = (candidates: readonly Candidate[], k = 5) => plainRule.protect(candidates, { k });
const columns = ["test", "variant", "ageBand", "category", "quarter"];

/** As many women of one band with a vertical leap as asked for; the first one's id is `from`. */
function women(count: number, ageBand: string, from = 1): Candidate[] {
  return Array.from({ length: count }, (_none, index) => ({
    athlete: from + index,
    test: "vertical",
    variant: "",
    ageBand,
    category: "women",
    quarter: "2026-Q4",
    consent: "given",
    mark: { state: "complete", value: 300 + index },
  }));
}

test("five alike stay in, four are held back and counted", () => {
  const { kept, suppressed, kReached } = protect([...women(5, "20 to 24"), ...women(4, "25 to 29", 6)]);
  expect(kept.map(({ athlete }) => athlete)).toEqual([1, 2, 3, 4, 5]);
  expect(kReached).toBe(5);
  expect(suppressed).toEqual([
    {
      reason: "small-class",
      count: 4,
      athletes: [6, 7, 8, 9],
      where: { test: "vertical", variant: "", ageBand: "25 to 29", category: "women", quarter: "2026-Q4" },
    },
  ]);
});

test("whoever may not be shared does not fill a class for the others", () => {
  const [first, ...others] = women(5, "20 to 24");
  const consented = protect([...others, { ...(first as Candidate), consent: "no-share" }]);
  expect(consented.kept).toEqual([]);
  expect(consented.kReached).toBeNull();
  expect(consented.suppressed.map(({ reason, count }) => [reason, count])).toEqual([
    ["no-share", 1],
    ["small-class", 4],
  ]);
});

test("one athlete's second mark of the same test does not fill a class either", () => {
  const four = women(4, "20 to 24");
  const again = { ...(four[0] as Candidate), mark: { state: "complete", value: 999 } } as const;
  const { kept, suppressed } = protect([...four, again]);
  expect(kept).toEqual([]);
  expect(suppressed.map(({ reason, count }) => [reason, count])).toEqual([
    ["repeated", 1],
    ["small-class", 4],
  ]);
});

test.each([4, 1, 0, -5, Number.NaN])("k of %d is refused", (k) => {
  expect(() => protect(women(9, "20 to 24"), k)).toThrow(Refusal);
});

test("every class that leaves has at least k different athletes, as an independent counter finds", () => {
  fc.assert(
    fc.property(halls, fc.integer({ min: 5, max: 9 }), (candidates, k) => {
      const { kept, kReached } = protect(candidates, k);
      const table = kept.map((row) => ({ ...row, athlete: String(row.athlete), value: String(row.value) }));
      const counted = kept.length === 0 ? null : countClasses(table, columns, "athlete");
      expect(kReached).toBe(counted?.k ?? null);
      if (counted === null) return;
      expect(counted.k).toBeGreaterThanOrEqual(k);
      expect(counted.l).toBe(counted.k);
    }),
  );
});

test("nobody leaves without consent or without a complete mark", () => {
  fc.assert(
    fc.property(halls, (candidates) => {
      const may = new Set(
        candidates
          .filter(({ consent, mark }) => consent === "given" && mark.state === "complete")
          .map(({ athlete, test, variant, mark }) => JSON.stringify([athlete, test, variant, mark])),
      );
      for (const { athlete, test, variant, value } of protect(candidates).kept) {
        expect(may).toContain(JSON.stringify([athlete, test, variant, { state: "complete", value }]));
      }
    }),
  );
});

test("every row is either kept or counted once, and a small class is small", () => {
  fc.assert(
    fc.property(halls, (candidates) => {
      const { kept, suppressed } = protect(candidates);
      expect(kept.length + suppressed.reduce((sum, { count }) => sum + count, 0)).toBe(candidates.length);
      for (const { reason, count, athletes } of suppressed) {
        expect(new Set(athletes).size).toBe(athletes.length);
        if (reason === "small-class") expect([count < 5, athletes.length]).toEqual([true, count]);
      }
    }),
  );
});

test("the order of the rows and the athletes' ids say nothing: shuffled and renamed, the same rows leave", () => {
  const seed = [1, 2, 3, 4] as const;
  fc.assert(
    fc.property(
      halls.chain((candidates) =>
        fc.tuple(
          fc.constant(candidates),
          fc.shuffledSubarray(candidates, { minLength: candidates.length, maxLength: candidates.length }),
          fc.integer({ min: 1, max: 1000 }),
        ),
      ),
      ([candidates, permuted, step]) => {
        const renamed = permuted.map((row) => ({ ...row, athlete: 5000 - row.athlete * step }));
        const published = publish(protect(candidates).kept, seededChance(seed));
        expect(publish(protect(renamed).kept, seededChance(seed))).toEqual(published);
      },
    ),
  );
});
