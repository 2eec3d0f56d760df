import { refused, unreadable } from "../reference/refused.ts";
import type { CellRows } from "../reference/rows.ts";
import { boundIn, isAgeBand, isQuarter } from "../reference/told-cells.ts";
import { protocolOf, testCodes } from "../tests/registry.ts";
import { sentence } from "../words.ts";
import { tableFiles } from "./descriptor.ts";
import {
  everybody,
  type GroupOfMarks,
  groupCategories,
  leastOfGroup,
  type Percentile,
  percentilesTold,
  tableLimits,
} from "./table.ts";

/** Columns of groups.csv, percentiles.csv and bundles.csv. `rules` is the fingerprint. */
export const groupColumns = [
  ...["group", "test", "variant", "rules", "category", "age_band", "marks", "halls", "counts_as"],
  ...["first_quarter", "last_quarter", "unit", "better"],
] as const;
export const percentileColumns = ["group", "percentile", "low", "high"] as const;
export const bundleColumns = ["sha256"] as const;

/**
 * Reads the groups of a table with their percentiles.
 * @throws Refusal `bad-input` with the first line that no table has; also when fewer marks or halls are behind a group,
 * or beyond a percentile, than any table tells.
 */
export function readGroups(groups: CellRows, percentiles: CellRows): GroupOfMarks[] {
  const rows = rowsOf(tableFiles.groups, groups, groupColumns, tableLimits.groups);
  if (rows.length === 0) throw refused(sentence("reference.empty"));
  const told = percentilesByGroup(percentiles);
  const read = rows.map((row, index) => groupOf(row, index, told.get(String(index + 1)) ?? []));
  const unclaimed = [...told.keys()].some(
    (group) => !/^[1-9]\d*$/.test(group) || Number(group) > rows.length,
  );
  if (unclaimed) throw unreadable(tableFiles.percentiles);
  const names = new Set(
    read.map(({ fingerprint, category, ageBand }) => JSON.stringify([fingerprint, category, ageBand])),
  );
  if (names.size !== read.length) throw unreadable(tableFiles.groups);
  return read;
}

/** Reads the hashes of a table's bundles. @throws Refusal `bad-input` */
export function readBundleHashes(cells: CellRows): string[] {
  const rows = rowsOf(tableFiles.bundles, cells, bundleColumns, tableLimits.bundles);
  const hashes = rows.map(([hash = ""], index) => {
    if (!/^[0-9a-f]{64}$/.test(hash)) throw wrong(tableFiles.bundles, index, "sha256");
    return hash;
  });
  if (new Set(hashes).size !== hashes.length) throw unreadable(tableFiles.bundles);
  return hashes;
}

type Rows = readonly (readonly string[])[];

/** @throws Refusal `bad-input` for other columns, too many rows, or a row of another length. */
function rowsOf(name: string, cells: CellRows, columns: readonly string[], most: number): Rows {
  const [header = [], ...rows] = cells;
  if (header.join() !== columns.join()) throw refused(sentence("reference.columns", { name }));
  if (rows.length > most) throw refused(sentence("reference.tooMany", { most }));
  rows.forEach((row, index) => {
    if (row.length !== columns.length) throw wrong(name, index, columns.at(-1) ?? "");
  });
  return rows;
}

function wrong(name: string, index: number, column: string): Error {
  return refused(sentence("reference.row", { name, line: index + 2, column }));
}

/** A percentile as text, with the number of its line from 0. */
interface ToldPercentile {
  readonly index: number;
  readonly cells: readonly string[];
}

function percentilesByGroup(cells: CellRows): Map<string, ToldPercentile[]> {
  const most = tableLimits.groups * percentilesTold.length;
  const rows = rowsOf(tableFiles.percentiles, cells, percentileColumns, most);
  const told = rows.map((row, index): ToldPercentile => ({ index, cells: row }));
  return Map.groupBy(told, ({ cells: [group = ""] }) => group);
}

function groupOf(row: readonly string[], index: number, told: readonly ToldPercentile[]): GroupOfMarks {
  const fail = (column: (typeof groupColumns)[number]) => wrong(tableFiles.groups, index, column);
  const [group, code, variant = "", rules = "", category, ageBand = ""] = row;
  const [marks, halls, countsAs] = row.slice(6, 9).map(countOf);
  const [from = "", to = "", unit, better] = row.slice(9);
  const test = testCodes.find((each) => each === code);
  const [toldCategory] = groupCategories.filter((each) => each === category);
  if (group !== String(index + 1)) throw fail("group");
  if (test === undefined) throw fail("test");
  const { grain, variants, better: direction } = protocolOf(test);
  if (!variants.includes(variant)) throw fail("variant");
  if (rules.length > 10_000 || !rules.startsWith(variant === "" ? `${test} ` : `${test}/${variant} `)) {
    throw fail("rules");
  }
  if (toldCategory === undefined) throw fail("category");
  if (ageBand !== everybody && !isAgeBand(ageBand)) throw fail("age_band");
  if (marks === undefined || marks < leastOfGroup.marks) throw fail("marks");
  if (halls === undefined || halls < leastOfGroup.halls || halls > marks) throw fail("halls");
  if (countsAs === undefined || countsAs < 1 || countsAs > marks) throw fail("counts_as");
  if (!isQuarter(from)) throw fail("first_quarter");
  if (!isQuarter(to)) throw fail("last_quarter");
  if (unit !== grain.unit) throw fail("unit");
  if (better !== direction) throw fail("better");
  const read = told.map((each) => percentileOf(each, test, marks));
  requireRising(read);
  return {
    ...{
      test,
      variant,
      fingerprint: rules,
      category: toldCategory,
      ageBand,
      marks,
      halls,
      countsAs,
      from,
      to,
    },
    percentiles: read,
  };
}

function countOf(text: string): number | undefined {
  return /^[1-9]\d{0,8}$/.test(text) ? Number(text) : undefined;
}

function percentileOf(
  { index, cells }: ToldPercentile,
  test: GroupOfMarks["test"],
  marks: number,
): Percentile {
  const [, told, low = "", high = ""] = cells;
  const fail = (column: (typeof percentileColumns)[number]) => wrong(tableFiles.percentiles, index, column);
  const percentile = percentilesTold.find((each) => String(each) === told);
  if (percentile === undefined || !isToldAmong(percentile, marks)) throw fail("percentile");
  const from = boundIn(test, low);
  const to = boundIn(test, high);
  if (from === undefined || (from === null && to === null)) throw fail("low");
  if (to === undefined || (from !== null && to !== null && from >= to)) throw fail("high");
  return { percentile, low: from, high: to };
}

/** True if enough of so many marks lie beyond a percentile, on either side, for it to be told. */
export function isToldAmong(percentile: number, marks: number): boolean {
  return Math.min(percentile, 100 - percentile) * marks >= leastOfGroup.beyond * 100;
}

/** Percentiles and their bounds never fall. @throws Refusal `bad-input` */
function requireRising(percentiles: readonly Percentile[]): void {
  percentiles.slice(1).forEach((later, index) => {
    const before = percentiles[index] as Percentile;
    const rises =
      later.percentile > before.percentile &&
      (later.low ?? -Infinity) >= (before.low ?? -Infinity) &&
      (later.high ?? Infinity) >= (before.high ?? Infinity);
    if (!rises) throw unreadable(tableFiles.percentiles);
  });
}
