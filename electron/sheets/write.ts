import Papa from "papaparse";
import { harmless, numberText } from "./formula.ts";
import type { Separator } from "./grid.ts";

/** A cell of a sheet that leaves: text is escaped, a number is written as one, null is empty. */
export type SheetCell = string | number | null;

interface Writing {
  readonly forSpreadsheets?: boolean;
  readonly separator?: Separator;
}

/** Returns a cell's text before quoting. */
function cellText(cell: SheetCell): string {
  if (cell === null) return "";
  return typeof cell === "number" ? numberText(cell) : harmless(cell);
}

/**
 * Formats rows as CSV by RFC 4180: CRLF after every record, the last one too; fields quoted where necessary.
 * `forSpreadsheets` adds a byte order mark, without which some spreadsheets break accents; `separator`: the comma of the
 * RFC unless the sheet goes back to somebody who uses semicolons.
 */
export function writeSheet(
  headers: readonly string[],
  rows: readonly (readonly SheetCell[])[],
  { forSpreadsheets = false, separator = "," }: Writing = {},
): string {
  const texts = [headers, ...rows].map((row) => row.map(cellText));
  const mark = forSpreadsheets ? "\uFEFF" : "";
  return `${mark}${Papa.unparse(texts, { newline: "\r\n", delimiter: separator })}\r\n`;
}
