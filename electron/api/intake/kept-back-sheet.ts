import type { Language } from "../../domain/languages.ts";
import { isNumberText, restored } from "../../sheets/formula.ts";
import { type SheetCell, writeSheet } from "../../sheets/write.ts";
import { say } from "../door/words.ts";
import type { KeptBackRow } from "./outcome.ts";
import { ownColumns, type PlannedSheet } from "./sheet.ts";

/** Why a row is not imported, in words, with the column to look at before each reason. */
function reasonText(row: KeptBackRow, language: Language): string {
  return [row, ...(row.also ?? [])]
    .map(({ field, reason }) =>
      field === null ? say(reason, language) : `${field}: ${say(reason, language)}`,
    )
    .join(" ");
}

/**
 * Makes a sheet of the rows not imported, in their own columns, with line and reason; corrected, it can be imported.
 */
export function keptBackSheet(
  { headers, keptBack, separator }: Pick<PlannedSheet, "headers" | "keptBack" | "separator">,
  language: Language,
): string {
  const columns = ownColumns(headers);
  const rows = keptBack.map((row): SheetCell[] => [
    ...columns.map((column) => asCell(row.cells[column] ?? "")),
    row.line,
    reasonText(row, language),
    // Cells beyond the headers, so that nothing is lost; the row is not imported until they are corrected.
    ...row.cells.slice(headers.length).map(asCell),
  ]);
  const names = columns.map((column) => headers[column] ?? "");
  return writeSheet([...names, "line", "reason"], rows, { forSpreadsheets: true, separator });
}

/**
 * Returns a cell. A plain number stays one, but with a minus it is somebody else's text: split at a semicolon it would
 * run together with the next cell. Text that came in escaped is not escaped twice.
 */
function asCell(text: string): SheetCell {
  if (isNumberText(text) && String(Number(text)) === text && Number(text) >= 0) return Number(text);
  return restored(text);
}
