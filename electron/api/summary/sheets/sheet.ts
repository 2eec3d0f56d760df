import { type SheetCell, writeSheet } from "../../../sheets/write.ts";

/** One column of a sheet: its name, its unit or code values, its meaning, and its cell of a row. */
export interface SheetColumn<Row> {
  readonly name: string;
  /** The unit, or the form of its texts. Empty for plain text. */
  readonly unit: string;
  readonly means: string;
  readonly cell: (row: Row) => SheetCell;
}

export function column<Row>(
  name: string,
  unit: string,
  means: string,
  cell: SheetColumn<Row>["cell"],
): SheetColumn<Row> {
  return { name, unit, means, cell };
}

/** A sheet with all that explains it: the data dictionary is made from the sheet's own columns. */
export interface SummarySheet {
  /** The file's name. */
  readonly name: string;
  /** The meaning of one row. */
  readonly holds: string;
  readonly columns: readonly Pick<SheetColumn<never>, "name" | "unit" | "means">[];
  readonly rows: readonly (readonly SheetCell[])[];
}

export function sheetOf<Row>(
  name: string,
  holds: string,
  columns: readonly SheetColumn<Row>[],
  rows: readonly Row[],
): SummarySheet {
  return { name, holds, columns, rows: rows.map((row) => columns.map((column) => column.cell(row))) };
}

/** Formats a sheet as CSV by RFC 4180, with a byte order mark: spreadsheets open it, and names have accents. */
export function textOf({ columns, rows }: SummarySheet): string {
  return writeSheet(
    columns.map(({ name }) => name),
    rows,
    { forSpreadsheets: true },
  );
}
