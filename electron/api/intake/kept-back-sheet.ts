import type { Language } from "../../domain/languages.ts";
import { isNumberText, restored } from "../../sheets/formula.ts";
import { type SheetCell, writeSheet } from "../../sheets/write.ts";
import { say } from "../door/words.ts";
import type { KeptBackRow } from "./outcome.ts";
import { ownColumns, type PlannedSheet } from "./sheet.ts";

/** Why a row is kept back, in words, with the column to look at before it. */
function reasonText({ field, reason }: KeptBackRow, language: Language): string {
  return field === null ? say(reason, language) : `${field}: ${say(reason, language)}`;
}

/**
 * The rows that stayed outside as a sheet of their own: the columns of the original, the line and the reason. It can be
 * corrected and taken in like any other.
 */
export function keptBackSheet(
  { headers, keptBack }: Pick<PlannedSheet, "headers" | "keptBack">,
  language: Language,
): string {
  const columns = ownColumns(headers);
  const rows = keptBack.map((row): SheetCell[] => [
    ...columns.map((column) => asCell(row.cells[column] ?? "")),
    row.line,
    reasonText(row, language),
    // Cells beyond the headers, so that nothing is lost; they keep the row outside until it is put right.
    ...row.cells.slice(headers.length).map(asCell),
  ]);
  const names = columns.map((column) => headers[column] ?? "");
  return writeSheet([...names, "line", "reason"], rows, { forSpreadsheets: true });
}

/**
 * A plain number stays one, but with a minus it is somebody else's text: split at a semicolon it would run together with
 * the cell behind it. Text that came in harmless is not made harmless twice.
 */
function asCell(text: string): SheetCell {
  if (isNumberText(text) && String(Number(text)) === text && Number(text) >= 0) return Number(text);
  return restored(text);
}
