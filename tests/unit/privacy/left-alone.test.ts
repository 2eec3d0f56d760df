import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/chance.ts";
import { sortOut } from "../../../electron/domain/privacy/able.ts";
import { leftAlone } from "../../../electron/domain/privacy/left-alone.ts";
import { sightingsOf } from "../../../electron/domain/privacy/neighbour.ts";
import { protect } from "../../../electron/domain/privacy/protect.ts";
import { publish } from "../../../electron/domain/privacy/publish.ts";
import { bundleKinds, type ReleasedRow, usualStrictness } from "../../../electron/domain/privacy/rule.ts";
import { playSubtraction } from "../../../electron/domain/privacy/subtraction.ts";
import { halls, leaps } from "./hall.ts";

const quasi = { ageBand: "25 to 29", category: "women", leagueSize: "15 to 29", quarter: "2026-Q4" };
const leap = (
  athlete: number,
  low: number | null,
  high: number | null,
  ageBand = quasi.ageBand,
): ReleasedRow => ({
  ...{ athlete, quasi: { ...quasi, ageBand } },
  marks: [{ test: "vertical", variant: "", low, high }],
});

test("hidden ones are left alone where all of their class say the same interval", () => {
  const kept = [leap(1, null, 400), leap(2, null, 400), leap(3, 400, null), leap(4, 400, null, "30 to 34")];
  const able = leaps(Array.from({ length: 5 }, (_none, index) => 300 + index));
  const alone = (hidden: readonly number[]) => [
    ...leftAlone(
      kept,
      sortOut(able.map((mark) => ({ ...mark, hidden: hidden.includes(mark.athlete) }))).able,
    ),
  ];
  expect(alone([])).toEqual([]);
  expect(alone([1])).toEqual([1]);
  expect(alone([1, 2])).toEqual([1, 2]);
  expect(alone([1, 3])).toEqual([]);
  // Another class is no company.
  expect(alone([1, 4])).toEqual([1, 4]);
  expect(alone([1, 3, 4])).toEqual([4]);
});

test("a single hidden one's mark stays, and is counted with its reason", () => {
  const candidates = leaps(Array.from({ length: 24 }, (_none, index) => 300 + 10 * index)).map((each) => ({
    ...each,
    hidden: each.athlete === 7,
  }));
  const { kept, suppressed, able } = protect("marks", candidates, usualStrictness);
  expect(kept.map(({ athlete }) => athlete)).not.toContain(7);
  expect(kept.length).toBeGreaterThan(20);
  expect(suppressed).toContainEqual(
    expect.objectContaining({ reason: "left-alone", count: 1, athletes: [7] }),
  );
  expect(able).toHaveLength(24);
});

test("property: whatever a day holds and whomever the board hides, the second neighbour finds nobody for certain", () => {
  let foundWithout = 0;
  fc.assert(
    fc.property(
      halls,
      fc.constantFrom(...bundleKinds),
      fc.integer({ min: 2, max: 9 }),
      (hall, kind, each) => {
        const candidates = hall.map((one) => ({ ...one, hidden: one.athlete % each === 0 }));
        const linked = kind === "profiles";
        const { kept, able, suppressed } = protect(kind, candidates, usualStrictness);
        const rows = publish(kept, seededChance([1, 2, 3, 4]));
        expect(playSubtraction(rows, sightingsOf(able), linked)).toMatchObject({ found: 0, people: 0 });
        // Nothing is lost without a reason, nothing counted twice.
        const told = kept.reduce((sum, { marks }) => sum + marks.length, 0);
        expect(told + suppressed.reduce((sum, { count }) => sum + count, 0)).toBe(hall.length);
        const blind = protect(kind, hall, usualStrictness).kept;
        foundWithout += playSubtraction(
          publish(blind, seededChance([1, 2, 3, 4])),
          sightingsOf(able),
          linked,
        ).found;
      },
    ),
    { numRuns: 60 },
  );
  expect(foundWithout).toBeGreaterThan(0);
});
