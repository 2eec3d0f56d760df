import type { BundleKind } from "../privacy/rule.ts";
import { protocolOf, testCodes } from "../tests/registry.ts";
import { sentence } from "../words.ts";
import { rowsNames } from "./descriptor.ts";
import { refused } from "./refused.ts";

/** One mark of a row, as text. `columns` are the names of its bounds. */
export interface MarkCells {
  readonly test: string;
  readonly variant: string;
  readonly unit: string | null;
  readonly low: string;
  readonly high: string;
  readonly columns: readonly [low: string, high: string];
}

/** The cells of a row besides its marks, in column order. */
export type QuasiCells = readonly [ageBand: string, category: string, leagueSize: string, quarter: string];

/** A row by the meaning of its cells; its length has been checked. */
export interface ReadRow {
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
export function rowReader(kind: BundleKind, header: readonly string[]): (row: readonly string[]) => ReadRow {
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
