import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { GroupOfMarks } from "../../../electron/domain/reference-table/table.ts";
import type { Database } from "../../../electron/reference/database.ts";
import { openEngine } from "../../../electron/reference/engine.ts";
import { type Found, groupsOf } from "../../../electron/reference/groups.ts";
import { percentilesSheet } from "../../../electron/reference/percentiles-sheet.ts";
import { countGroups, differences, type PlainGroup, type PlainMark } from "../../checks/count-table.ts";
import { type FilledMarks, fill } from "./fill.ts";
import { inSqlite } from "./in-sqlite.ts";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "merge-sql-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Alike marks of one hall. Few values of everything, so that groups are large, halls too large, and bounds shared. */
interface Drawn {
  readonly hall: number;
  readonly category: string;
  readonly ageBand: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly count: number;
  readonly quarter: string;
}

const drawn: fc.Arbitrary<Drawn> = fc
  .record({
    hall: fc.oneof({ weight: 3, arbitrary: fc.integer({ min: 0, max: 2 }) }, fc.integer({ min: 3, max: 9 })),
    low: fc.option(fc.integer({ min: 0, max: 12 }), { freq: 6 }),
    width: fc.integer({ min: 1, max: 4 }),
    open: fc.boolean(),
    category: fc.constantFrom("women", "men", "not told"),
    ageBand: fc.constantFrom("25 to 29", "30 to 34"),
    // Now and then one hall sends far more than all others.
    count: fc.oneof(
      { weight: 6, arbitrary: fc.integer({ min: 5, max: 9 }) },
      fc.integer({ min: 40, max: 700 }),
    ),
    quarter: fc.constantFrom("2026", "2026-Q1", "2026-Q3"),
  })
  .map(({ low, width, open, ...rest }) => {
    return { ...rest, low, high: low === null ? width * 3 : open ? null : low + width };
  });
const many = fc.array(drawn, { minLength: 1, maxLength: 60 });

const rules = "push-up/full beatsPerRep=2 bpm=40 missesToStop=3";

function filled(marks: readonly Drawn[]): FilledMarks[] {
  return marks.map(({ hall, category, ageBand, low, high, count, quarter }) => ({
    ...{ hall, quarter, low, high, marks: count },
    kind: ["push-up", "full", rules, category, ageBand],
  }));
}

async function sqlite<Result>(marks: readonly Drawn[], ask: (database: Database) => Promise<Result>) {
  const database = inSqlite();
  await fill(database, filled(marks));
  const found = await ask(database);
  database.close();
  return found;
}

async function duckDb<Result>(marks: readonly Drawn[], ask: (database: Database) => Promise<Result>) {
  const home = mkdtempSync(join(folder, "engine-"));
  const engine = await openEngine(home, home);
  await fill(engine, filled(marks));
  const found = await ask(engine);
  engine.close();
  return found;
}

function plain(marks: readonly Drawn[]): PlainMark[] {
  return marks.flatMap(({ hall, category, ageBand, low, high, count, quarter }) => {
    const told = { test: "push-up", variant: "full", rules, category, age: ageBand, quarter };
    const mark = { hall: String(hall), ...told, low: low ?? -Infinity, high: high ?? Infinity };
    return Array.from({ length: count }, () => mark);
  });
}

function asCounted({ groups }: Found): PlainGroup[] {
  return groups.map((group: GroupOfMarks) => ({
    name: JSON.stringify([group.test, group.variant, group.fingerprint, group.category, group.ageBand]),
    ...{ marks: group.marks, halls: group.halls, countsAs: group.countsAs, different: 0 },
    ...{ from: group.from, to: group.to },
    percentiles: group.percentiles.map(
      ({ percentile, low, high }) => `${percentile}:${low ?? ""},${high ?? ""}`,
    ),
  }));
}

test("a table is the same in SQLite as by a plain count, whatever the halls, bounds and caps", async () => {
  let told = 0;
  await fc.assert(
    fc.asyncProperty(many, async (marks) => {
      const groups = asCounted(await sqlite(marks, groupsOf));
      told += groups.length;
      expect(differences(groups, countGroups(plain(marks)))).toEqual([]);
    }),
    { numRuns: 300 },
  );
  expect(told).toBeGreaterThan(300);
});

test("and in DuckDB the same as in SQLite, to the last mark", async () => {
  await fc.assert(
    fc.asyncProperty(many, async (marks) => {
      const [one, two] = [await duckDb(marks, groupsOf), await sqlite(marks, groupsOf)];
      expect(one.groups).toEqual(two.groups);
      expect(one.halls.length).toBe(two.halls.length);
      one.halls.forEach(({ hall, test: code, above, variance, size }, index) => {
        expect(two.halls[index]).toMatchObject({ hall, test: code });
        expect(two.halls[index]?.above).toBeCloseTo(above, 6);
        expect(two.halls[index]?.variance).toBeCloseTo(variance, 6);
        expect(two.halls[index]?.size).toBeCloseTo(size, 6);
      });
    }),
    { numRuns: 15 },
  );
});

/** Type 7 of Hyndman and Fan by the place in sorted lists: what the sheet told before marks had weights. */
function sheetLines(marks: readonly PlainMark[]): string[] {
  const groups = Map.groupBy(marks, ({ category, age }) => `push-up,full,${rules},${category},${age}`);
  return [...groups].flatMap(([name, group]) => {
    if (group.length < 20) return [];
    const lows = group.map(({ low }) => low).sort((a, b) => a - b);
    const highs = group.map(({ high }) => high).sort((a, b) => a - b);
    const halls = new Set(group.map(({ hall }) => hall)).size;
    const text = (bound = Number.NaN) => (Number.isFinite(bound) ? String(bound) : "");
    return [5, 10, 25, 50, 75, 90, 95].map((p) => {
      const place = ((group.length - 1) * p) / 100;
      const bounds = `${text(lows[Math.floor(place)])},${text(highs[Math.ceil(place)])}`;
      return `${name},${p},${bounds},reps,higher,${group.length},${halls}`;
    });
  });
}

test("where every mark counts whole, percentiles are those of type 7", async () => {
  await fc.assert(
    fc.asyncProperty(many, async (marks) => {
      const { content } = await sqlite(marks, percentilesSheet);
      expect(content.split("\r\n").slice(1, -1).sort()).toEqual(sheetLines(plain(marks)).sort());
    }),
    { numRuns: 200 },
  );
});

test("the queries run on SQLite from 3.28 on, where window functions are whole", () => {
  const db = new SqliteDatabase(":memory:");
  const { version } = db.prepare<[], { version: string }>("SELECT sqlite_version() AS version").get() ?? {};
  db.close();
  expect(Number(version?.split(".")[1])).toBeGreaterThanOrEqual(28);
});
