import Papa from "papaparse";
import { harmless, numberText } from "./formula.ts";

/** A cell that leaves: text is made harmless, a number is written as one, null is left empty. */
export type SheetCell = string | number | null;

/** What of a cell stands in a sheet, before quoting. */
function cellText(cell: SheetCell): string {
  if (cell === null) return "";
  return typeof cell === "number" ? numberText(cell) : harmless(cell);
}

/**
 * Rows as CSV text by RFC 4180: CRLF after every record, the last one too; fields quoted where they must be.
 * `forSpreadsheets` puts the byte order mark before it, without which some spreadsheets break accents.
 */
export function writeSheet(
  headers: readonly string[],
  rows: readonly (readonly SheetCell[])[],
  { forSpreadsheets = false } = {},
): string {
  const texts = [headers, ...rows].map((row) => row.map(cellText));
  const mark = forSpreadsheets ? "\uFEFF" : "";
  return `${mark}${Papa.unparse(texts, { newline: "\r\n", delimiter: "," })}\r\n`;
}
