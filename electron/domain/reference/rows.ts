import type { MarkBounds } from "../privacy/coding.ts";
import { notTold } from "../privacy/hierarchy.ts";
import { ladders } from "../privacy/ladder.ts";
import { leagueSizes } from "../privacy/quasi.ts";
import { type BundleKind, leastK } from "../privacy/rule.ts";
import { protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import { sentence } from "../words.ts";

import { type AlikeMarks, type BundleTest, type ToldCategory, toldCategories } from "./bundle.ts";
import { rowsNames } from "./descriptor.ts";
import { bundleLimits } from "./limits.ts";
import { refused } from "./refused.ts";
import { boundIn, isAgeBand, isQuarter } from "./told-cells.ts";

/** The cells of a sheet of rows, the header first. */
export type CellRows = readonly (readonly string[])[];

type Mark = Omit<AlikeMarks, "count">;

/**
 * Reads marks.csv or profiles.csv: every row as strictly as it was written, in grains, equal marks counted together.
 * Which marks of a profile belong to one athlete is not kept.
 * @throws Refusal `bad-input` with the first line that no bundle has. Also when fewer athletes are behind a row than
 * any bundle allows, since somebody could be found by it.
 */
export function readRows(kind: BundleKind, cells: CellRows, tests: readonly BundleTest[]): AlikeMarks[] {
  const [header = [], ...rows] = cells;
  const read = rowReader(kind, header);
  const name = rowsNames[kind];
  if (rows.length === 0) throw refused(sentence("reference.empty"));
  if (rows.length > bundleLimits.rows)
    throw refused(sentence("reference.tooMany", { most: bundleLimits.rows }));
  const ids = new Set<string>();
  const marks = rows.flatMap((row, index) => {
    const fail: Fail = (column) => refused(sentence("reference.row", { name, line: index + 2, column }));
    if (row.length !== header.length) throw fail(header.at(-1) ?? "");
    const { id, quasi, told } = read(row);
    if (!/^[b-z]{10}$/.test(id) || ids.has(id)) throw fail("id");
    ids.add(id);
    const kept = quasiOf(quasi, fail);
    return told.map((mark): Mark => ({ ...testOf(mark, tests, fail), ...kept, ...intervalIn(mark, fail) }));
  });
  requireCompany(rows);
  return alike(marks);
}

/** Makes the error for the row being read, by its column. */
type Fail = (column: string) => Error;

function quasiOf([ageBand, category, leagueSize, quarter]: QuasiCells, fail: Fail) {
  const told = toldCategories.find((each) => each === category);
  if (!isAgeBand(ageBand)) throw fail("age_band");
  if (told === undefined) throw fail("category");
  if (![...leagueSizes, notTold].includes(leagueSize)) throw fail("league_size");
  if (!isQuarter(quarter)) throw fail("quarter");
  return { ageBand, category: told satisfies ToldCategory, quarter };
}

function testOf({ test, variant, unit }: MarkCells, tests: readonly BundleTest[], fail: Fail): BundleTest {
  const found = tests.find((each) => each.test === test && each.variant === variant);
  if (found === undefined) throw fail(tests.some((each) => each.test === test) ? "variant" : "test");
  if (unit !== null && unit !== protocolOf(found.test).grain.unit) throw fail("unit");
  return found;
}

function intervalIn({ test, low, high, columns }: MarkCells, fail: Fail): MarkBounds {
  const from = boundOf(test as TestCode, low, () => fail(columns[0]));
  const to = boundOf(test as TestCode, high, () => fail(columns[1]));
  if (from === null && to === null) throw fail(columns[0]);
  if (from !== null && to !== null && from >= to) throw fail(columns[1]);
  return { low: from, high: to };
}

/** Reads a bound, which must lie on the test's ladder: no bundle ever reported a finer or other one. */
function boundOf(test: TestCode, text: string, fail: () => Error): number | null {
  const bound = boundIn(test, text);
  if (bound === null) return null;
  if (bound === undefined || !ladders[test].steps.some((step) => bound % step === 0)) throw fail();
  return bound;
}

/** Checks that enough rows have the same content, ids aside. */
function requireCompany(rows: CellRows): void {
  const company = new Map<string, number>();
  for (const row of rows) {
    const content = JSON.stringify(row.slice(1));
    company.set(content, (company.get(content) ?? 0) + 1);
  }
  if (Math.min(...company.values()) < leastK) throw refused(sentence("reference.exposed", { least: leastK }));
}

function alike(marks: readonly Mark[]): AlikeMarks[] {
  const counted = new Map<string, { mark: Mark; count: number }>();
  for (const mark of marks) {
    const { test, variant, category, ageBand, quarter, low, high } = mark;
    const key = JSON.stringify([test, variant, category, ageBand, quarter, low, high]);
    const there = counted.get(key);
    if (there === undefined) counted.set(key, { mark, count: 1 });
    else there.count += 1;
  }
  return [...counted.values()].map(({ mark, count }) => ({ ...mark, count }));
}

/** One mark of a row, as text. `columns` are the names of its bounds. */
interface MarkCells {
  readonly test: string;
  readonly variant: string;
  readonly unit: string | null;
  readonly low: string;
  readonly high: string;
  readonly columns: readonly [low: string, high: string];
}

/** The cells of a row besides its marks, in column order. */
type QuasiCells = readonly [ageBand: string, category: string, leagueSize: string, quarter: string];

/** A row by the meaning of its cells; its length has been checked. */
interface ReadRow {
  readonly id: string;
  readonly quasi: QuasiCells;
  /** The marks it has; a profile may have none. */
  readonly told: readonly MarkCells[];
}

const quasi = ["age_band", "category", "league_size", "quarter"];
const marksHeader = ["id", "test", "variant", ...quasi, "mark_low", "mark_high", "unit"];

/**
 * Returns the reader for the rows of a sheet with this header.
 * @throws Refusal `bad-input` when a column is missing, unknown or misplaced.
 */
function rowReader(kind: BundleKind, header: readonly string[]): (row: readonly string[]) => ReadRow {
  return kind === "marks" ? marksReader(header) : profilesReader(header);
}

function marksReader(header: readonly string[]): (row: readonly string[]) => ReadRow {
  if (header.join() !== marksHeader.join()) throw otherColumns("marks");
  return (row) => {
    const [id = "", test = "", variant = "", age = "", category = "", size = "", quarter = ""] = row;
    const [low = "", high = "", unit = ""] = row.slice(7);
    const columns = ["mark_low", "mark_high"] as const;
    return { id, quasi: [age, category, size, quarter], told: [{ test, variant, unit, low, high, columns }] };
  };
}

/** Every pair of columns that a profile can have, in column order. */
const pairs = testCodes.flatMap((test) =>
  protocolOf(test).variants.map((variant) => {
    const name = [test, variant]
      .filter((part) => part !== "")
      .join("_")
      .replaceAll("-", "_");
    return { test, variant, columns: [`${name}_low`, `${name}_high`] as const };
  }),
);

function profilesReader(header: readonly string[]): (row: readonly string[]) => ReadRow {
  const there = pairs.filter(({ columns }) => columns.some((column) => header.includes(column)));
  const expected = ["id", ...quasi, ...there.flatMap(({ columns }) => columns)];
  if (there.length === 0 || header.join() !== expected.join()) throw otherColumns("profiles");
  return (row) => {
    const [id = "", age = "", category = "", size = "", quarter = ""] = row;
    const told = there.flatMap((pair, index): MarkCells[] => {
      const [low = "", high = ""] = row.slice(5 + 2 * index);
      return low === "" && high === "" ? [] : [{ ...pair, unit: null, low, high }];
    });
    return { id, quasi: [age, category, size, quarter], told };
  };
}

function otherColumns(kind: BundleKind): Error {
  return refused(sentence("reference.columns", { name: rowsNames[kind] }));
}
