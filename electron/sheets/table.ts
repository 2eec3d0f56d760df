import { Refusal } from "../domain/refusal.ts";
import { sentence } from "../domain/words.ts";
import type { BrokenRow, Grid, SheetRow } from "./grid.ts";
import { headerRow } from "./header-line.ts";

/** The rows of a sheet below its headers. */
export interface Table {
  readonly headers: readonly string[];
  /** The line with the headers. */
  readonly headerLine: number;
  readonly rows: readonly SheetRow[];
  readonly broken: readonly BrokenRow[];
}

/**
 * Splits a sheet at its headers, which stand in `headerLine` (null: where they are found). What stands above them is a
 * title.
 * @throws Refusal `bad-input` when there is no header, or its quotation marks don't pair up.
 */
export function tableOf({ rows, broken }: Grid, headerLine: number | null = null): Table {
  const header = rows.find(({ line }) => line === headerLine) ?? headerRow(rows);
  const [firstBroken] = broken;
  if (firstBroken !== undefined && (header === undefined || firstBroken.line < (rows[0]?.line ?? 0))) {
    throw new Refusal("bad-input", sentence("sheets.quotes", { line: firstBroken.line }));
  }
  if (header === undefined) throw new Refusal("bad-input", sentence("sheets.empty"));
  const isBelow = ({ line }: SheetRow) => line > header.line;
  const headers = header.cells.map((cell) => cell.trim());
  return { headers, headerLine: header.line, rows: rows.filter(isBelow), broken: broken.filter(isBelow) };
}
