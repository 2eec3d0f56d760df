import fc from "fast-check";
import { expect, test } from "vitest";
import { protectProfiles } from "../../../electron/domain/privacy/profiles-rule.ts";
import { rowContent } from "../../../electron/domain/privacy/publish.ts";
import { type Candidate, usualStrictness } from "../../../electron/domain/privacy/rule.ts";
import { countClasses } from "./counter.ts";
import { halls, heaps } from "./hall.ts";

const protect = (candidates: readonly Candidate[], k = 5) =>
  protectProfiles(candidates, { ...usualStrictness, k });

/** Athletes alike in everything but a leap (mm) and a plank (s). */
function both(pairs: readonly (readonly [leap: number, plank: number])[]): Candidate[] {
  return pairs.flatMap(([leap, plank], athlete) =>
    (["vertical", "core"] as const).map((code) => ({
      ...{ athlete, league: athlete % 2, leagueSize: "15 to 29", ageBand: "25 to 29", category: "women" },
      ...{ test: code, variant: "", quarter: "2026-Q4", consent: "given" },
      mark: { state: "complete", value: code === "vertical" ? 20 * leap : plank },
    })),
  );
}

const times = (count: number, leap: number, plank: number) =>
  Array.from({ length: count }, () => [leap, plank] as const);

test("five of each of four profiles can be told, linked", () => {
  const four = [...times(5, 310, 60), ...times(5, 310, 160), ...times(5, 460, 60), ...times(5, 460, 160)];
  const { kept, suppressed } = protect(both(four));
  expect([kept.length, suppressed]).toEqual([20, []]);
  expect(kept.every(({ marks }) => marks.length === 2)).toBe(true);
  expect(
    countClasses(
      kept.map((row) => ({ row: rowContent(row) })),
      ["row"],
      "row",
    ),
  ).toMatchObject({ k: 5, classes: 4 });
});

test("each mark alone has company, but the whole profile has not: linked it stays, and unlinked it could leave", () => {
  // Ten low and ten high of each test, but only two in the corner of low leap and long plank.
  const corner = [...times(8, 310, 60), ...times(2, 310, 160), ...times(2, 460, 60), ...times(8, 460, 160)];
  const { kept, decisions } = protect(both(corner));
  expect(kept).toEqual([]);
  expect(decisions).toMatchObject([{ able: 20, kept: 0, levels: null }]);
});

test("one test alone is no profile", () => {
  const leapsOnly = both([...times(8, 310, 60), ...times(8, 460, 160)]).filter(
    ({ test: code }) => code === "vertical",
  );
  expect(protect(leapsOnly).kept).toEqual([]);
});

test("everything that a row says, all marks and which are missing, is said by k rows at least", () => {
  let left = 0;
  fc.assert(
    fc.property(fc.oneof(halls, heaps, heaps, heaps), (candidates) => {
      const { kept, decisions } = protect(candidates);
      if (kept.length === 0) return;
      left += 1;
      const rows = kept.map((row) => ({ row: rowContent(row), athlete: String(row.athlete) }));
      const counted = countClasses(rows, ["row"], "athlete");
      expect(counted.k).toBeGreaterThanOrEqual(5);
      expect(counted.l).toBe(counted.k);
      const [decision] = decisions;
      expect(decision?.codings.filter(({ coding }) => coding !== null).length).toBeGreaterThanOrEqual(2);
    }),
    { numRuns: 150 },
  );
  expect(left).toBeGreaterThan(3);
});

test("every mark is either told or counted once, and at most one athlete in twenty is suppressed", () => {
  fc.assert(
    fc.property(fc.oneof(halls, heaps), (candidates) => {
      const { kept, suppressed, decisions } = protect(candidates);
      const told = kept.reduce((sum, { marks }) => sum + marks.length, 0);
      expect(told + suppressed.reduce((sum, { count }) => sum + count, 0)).toBe(candidates.length);
      const rare = new Set(
        suppressed.filter(({ reason }) => reason === "rare").flatMap(({ athletes }) => athletes),
      );
      expect(rare.size).toBeLessThanOrEqual((decisions[0]?.able ?? 0) * 0.05);
    }),
  );
});
