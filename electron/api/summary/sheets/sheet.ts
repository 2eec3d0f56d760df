import { type SheetCell, writeSheet } from "../../../sheets/write.ts";

/** One column of a sheet: its name, its unit or code values, what it means, and what of a row stands in it. */
export interface SheetColumn<Row> {
  readonly name: string;
  /** The unit; or which form its texts have. Empty for plain text. */
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

/** A sheet with all that explains it: the data dictionary is made of the same columns as the sheet itself. */
export interface SummarySheet {
  /** The file's name. */
  readonly name: string;
  /** What one row is. */
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

/** As CSV by RFC 4180, with the byte order mark: these sheets are opened in spreadsheets, and names have accents. */
export function textOf({ columns, rows }: SummarySheet): string {
  return writeSheet(
    columns.map(({ name }) => name),
    rows,
    { forSpreadsheets: true },
  );
}
