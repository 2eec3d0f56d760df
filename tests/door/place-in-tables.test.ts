import { expect, test } from "vitest";
import { packTable } from "../../electron/domain/reference-table/packed.ts";
import type { GroupOfMarks, ReferenceTable } from "../../electron/domain/reference-table/table.ts";
import { addReference } from "../../electron/store/tables/reference-bundles.ts";
import { addTable, removeTable } from "../../electron/store/tables/reference-tables.ts";
import { group, plainTable } from "../unit/reference/making-table.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import type { Invented } from "./people-of-a-day.ts";
import { placeIn } from "./place-of-bib.ts";
import { reps } from "./station-day.ts";

/** So many women of 25, of whom each does as many push-ups as their bib has in it. */
async function pushedUp(count: number, more: Partial<Invented> = {}): Promise<BoardDay> {
  const people = Array.from({ length: count }, (_none, index) => ({
    ...{ league: "Alder", name: `Skater ${index}`, category: "women" as const, birthYear: 2001, share: true },
    ...more,
  }));
  const day = await boardDay(people);
  for (let bib = 1; bib <= count; bib += 1) await day.enter(bib, "push-up", reps(bib));
  return day;
}

let files = 0;
function bring(
  { desk }: BoardDay,
  groups: readonly GroupOfMarks[],
  more: Partial<ReferenceTable> = {},
): number {
  files += 1;
  const sha256 = String(files).padStart(64, "0");
  const publicKey = String(files).padStart(43, "k");
  const table = { ...plainTable, publisher: `Table ${files}`, publicKey, groups, ...more };
  const kept = { sha256, addedAt: "2026-11-01T10:00:00.000Z" };
  return desk.store.write(["references"], (db) => addTable(db, packTable(table), kept));
}

/** All ages of that category. */
const women: GroupOfMarks = { ...group, ageBand: "all", marks: 900, halls: 31 };
const everybody: GroupOfMarks = { ...women, category: "all", marks: 4000, halls: 61, countsAs: 2000 };

test("the same age and category come first, then the category, then everybody, and it is said which", async () => {
  const day = await pushedUp(10);
  expect(placeIn(day, 10)).toBeNull();
  const none = { end: null, halls: 61 };
  bring(day, [everybody], { publisher: "The harbour table" });
  expect(placeIn(day, 10)).toMatchObject({
    ...{ group: "mixed", origin: "The harbour table", ages: null, n: 4000, ...none },
  });
  bring(day, [women]);
  expect(placeIn(day, 10)).toMatchObject({ group: "imported", ages: null, n: 900, halls: 31 });
  bring(day, [group]);
  expect(placeIn(day, 10)).toMatchObject({
    group: "imported",
    ages: { from: 25, to: 29 },
    n: 400,
    halls: 12,
  });
});

test("the place allows for normal variation, and for how few independent marks the group says as much as", async () => {
  const day = await pushedUp(10);
  bring(day, [{ ...women, countsAs: 250 }]);
  // 1.96 · √(1.5² + (0.066 · 10)²) = 3.21 reps: of 6.79 the 25th percentile (5 to 6) is surely below and the 30th (6 to 7)
  // not; of 13.21 the 70th (14 to 15) is surely above and the 65th not. Wilson of 62.5 and of 175 in 250: 0.2006 and
  // 0.7535, worked out apart.
  expect(placeIn(day, 10)).toMatchObject({ n: 900, low: 20, high: 76 });
});

test("nobody is compared with another category, other rules, another age, or a table that has expired", async () => {
  const day = await pushedUp(10);
  bring(day, [{ ...women, category: "men" }]);
  bring(day, [{ ...women, fingerprint: `${women.fingerprint} other=1` }]);
  bring(day, [{ ...group, ageBand: "30 to 34" }]);
  bring(day, [{ ...everybody, ageBand: "25 to 29" }]);
  bring(day, [women], { validUntil: "2026-11-13" });
  expect(placeIn(day, 10)).toBeNull();
  bring(day, [women], { validUntil: "2026-11-14" });
  expect(placeIn(day, 10)).not.toBeNull();
});

test("a group that says less than twenty independent marks is left aside, however many it has", async () => {
  const day = await pushedUp(10);
  bring(day, [{ ...group, marks: 4000, countsAs: 19 }, women]);
  expect(placeIn(day, 10)).toMatchObject({ n: 900, ages: null });
});

test("who told no age is compared with all ages, and who told no category with those who told none either", async () => {
  const noAge = await pushedUp(10, { birthYear: null });
  bring(noAge, [group, { ...group, ageBand: "unknown" }, women]);
  expect(placeIn(noAge, 10)).toMatchObject({ n: 900, ages: null });
  const noCategory = await pushedUp(10, { category: null });
  bring(noCategory, [women, { ...women, category: "unknown", marks: 500 }, everybody]);
  expect(placeIn(noCategory, 10)).toMatchObject({ group: "imported", n: 500 });
});

test("a few of that day lose to a table that says more, and many of it do not", async () => {
  const few = await pushedUp(21, { birthYear: 1990 });
  bring(few, [women]);
  expect(placeIn(few, 11)).toMatchObject({ group: "today", ages: { from: 35, to: 39 } });
  const some = await pushedUp(21, { birthYear: null });
  expect(placeIn(some, 11)).toMatchObject({ group: "today", n: 20, halls: null });
  const id = bring(some, [women]);
  expect(placeIn(some, 11)).toMatchObject({ group: "imported", n: 900, halls: 31 });
  some.desk.store.write(["references"], (db) => removeTable(db, id));
  expect(placeIn(some, 11)).toMatchObject({ group: "today", n: 20 });
});

test("a bundle that is in a table too is no group of its own", async () => {
  const day = await pushedUp(10);
  const rules = { test: "push-up", variant: "full", fingerprint: group.fingerprint } as const;
  const rest = { category: "women", ageBand: "not told", quarter: "2026-Q1", count: 30 } as const;
  const contentSha256 = "c".repeat(64);
  const bundle = { contentSha256, tests: [rules], marks: [{ ...rules, ...rest, low: 5, high: 6 }] };
  const kept = { origin: "North", kind: "marks", sha256: "x", addedAt: "2026-11-01T10:00:00.000Z" } as const;
  day.desk.store.write(["references"], (db) => addReference(db, kept, bundle));
  expect(placeIn(day, 10)).toMatchObject({ origin: "North", n: 30 });
  const id = bring(day, [{ ...women, countsAs: 20 }], { bundles: [contentSha256] });
  expect(placeIn(day, 10)).toMatchObject({ n: 900, halls: 31 });
  day.desk.store.write(["references"], (db) => removeTable(db, id));
  expect(placeIn(day, 10)).toMatchObject({ origin: "North", n: 30 });
});
