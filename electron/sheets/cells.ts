import { type Cells, RowRefused } from "../domain/tests/cells.ts";
import type { TestCode } from "../domain/tests/registry.ts";
import { sentence } from "../domain/words.ts";
import { restored } from "./formula.ts";
import type { ColumnName } from "./headers.ts";
import { testCalled } from "./test-words.ts";

/** The cells of one row by the fields whose columns were found; `given` is what was said of all rows. */
export function cellsOf(
  columns: ReadonlyMap<ColumnName, number>,
  cells: readonly string[],
  given: Readonly<Record<string, string>> = {},
): Cells {
  return (field) => {
    const column = columns.get(field);
    const cell = column === undefined ? undefined : cells[column];
    const text = cell === undefined ? "" : restored(cell.trim()).trim();
    return text === "" ? (given[field] ?? "") : text;
  };
}

/** Refuses cells beyond the headers: a text with a separator in it would shift those behind it. @throws RowRefused */
export function refuseMoreCells(cells: readonly string[], columns: number): void {
  if (cells.slice(columns).every((cell) => cell.trim() === "")) return;
  throw new RowRefused(null, sentence("sheets.row.tooManyCells", { count: cells.length, columns }));
}

/** Returns a short text on one line; more than `most` characters are refused. */
export function line(cells: Cells, field: ColumnName, most: number): string {
  const text = cells(field).replace(/\s+/g, " ").normalize("NFC");
  if (text.length > most) throw new RowRefused(field, sentence("sheets.row.tooLong", { most }));
  return text;
}

export function requiredLine(cells: Cells, field: ColumnName, most: number): string {
  const text = line(cells, field, most);
  if (text === "") throw new RowRefused(field, sentence("sheets.row.empty"));
  return text;
}

/** Returns an athlete's derby number: 0 to 4 digits, as text. */
export function skaterNumber(cells: Cells): string {
  const text = cells("number").replace(/^#\s*/, "");
  if (!/^\d{0,4}$/.test(text)) throw new RowRefused("number", sentence("sheets.row.number"));
  return text;
}

/** The test, by its code or as people call it. */
export function testNamed(cells: Cells): TestCode {
  const test = testCalled(cells("test"));
  if (test === undefined) throw new RowRefused("test", sentence("sheets.row.test"));
  return test;
}
