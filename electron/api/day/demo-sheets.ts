import Papa from "papaparse";
import type { TestCode } from "../../domain/tests/registry.ts";
import { columnsOf, type SheetKindName } from "../../sheets/headers.ts";
import { writeSheet } from "../../sheets/write.ts";
import { daysBefore } from "../door/calendar.ts";
import type { DemoSheets } from "../door/desk.ts";

/** One row of a sheet by column. */
export type DemoRow = Readonly<Record<string, string>>;
export type DemoRows = Readonly<Record<SheetKindName, readonly DemoRow[]>>;

/** The year for which the ages of the demo's skaters were invented. */
const inventedIn = 2026;
/** Weeks between days: about a training block. */
const weeksApart = 17;

/** Returns the demo's rows as if written for today (ISO 8601): nobody grows older, and no result is too old. */
export function demoRows(sheets: DemoSheets, today: string): DemoRows {
  const past = rowsOf(sheets.past);
  const dates = [...new Set(past.map(({ date = "" }) => date))].sort().reverse();
  const moved = (date = "") => daysBefore(today, 7 * weeksApart * (dates.indexOf(date) + 1));
  const years = Number(today.slice(0, 4)) - inventedIn;
  return {
    roster: rowsOf(sheets.roster).map((row) => ({
      ...row,
      birth_year: String(Number(row.birth_year) + years),
    })),
    past: past.map((row) => ({ ...row, date: moved(row.date) })),
    results: rowsOf(sheets.results),
  };
}

/** Formats rows as bytes, so that the code for any league's sheet imports them. */
export function sheetOf(kind: SheetKindName, rows: readonly DemoRow[]): Uint8Array {
  const columns = columnsOf[kind];
  const cells = rows.map((row) => columns.map((column) => row[column] ?? null));
  return new TextEncoder().encode(writeSheet(columns, cells));
}

function rowsOf(bytes: Uint8Array): readonly DemoRow[] {
  const text = new TextDecoder().decode(bytes);
  return Papa.parse<DemoRow>(text, { header: true, skipEmptyLines: true }).data;
}

/** Returns the athlete of a row as text, the same for all rows of one athlete. */
export function whoOf({ league = "", number = "", name = "" }: DemoRow): string {
  return `${league}\n${number}\n${name}`;
}

/** Returns the test of a results row; our own sheets use the test codes. */
export function testOf({ test = "" }: DemoRow): TestCode {
  return test as TestCode;
}
