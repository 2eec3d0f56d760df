import type { KeptBackRow, Preview } from "../../parts/sheets/sheet.ts";

/** How the columns of a sheet were read. */
export type RowForm = Pick<Preview, "headers" | "fields">;

/**
 * Returns the column (from 0) of the first reason that names one; the first column where none does. A reason names a
 * field, or in a sheet with a column a test the column's own header.
 */
export function columnInDoubt(
  row: Pick<KeptBackRow, "field" | "also">,
  { headers, fields }: RowForm,
): number {
  const named = [row, ...row.also].map(({ field }) => {
    const header = fields.find((each) => each.field === field)?.header ?? field;
    return header === null ? -1 : headers.indexOf(header);
  });
  return named.find((column) => column >= 0) ?? 0;
}
