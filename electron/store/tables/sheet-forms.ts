import { execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** Field → column (from 0). */
type FormColumns = Readonly<Record<string, number>>;

/** Returns the columns of the last sheet of a form (SHA-256 in hexadecimal digits); undefined without one. */
export function columnsOfForm(db: ReadableDb, form: string): FormColumns | undefined {
  const found = firstRow<{ columns: string }>(db, "SELECT columns FROM sheet_form WHERE form = @form", {
    form,
  });
  return found === undefined ? undefined : (JSON.parse(found.columns) as FormColumns);
}

/** Keeps how a sheet of that form was read. */
export function keepForm(db: WritableDb, form: string, columns: FormColumns): void {
  const sql = `INSERT INTO sheet_form (form, columns) VALUES (@form, @columns)
    ON CONFLICT (form) DO UPDATE SET columns = excluded.columns`;
  execute(db, sql, { form, columns: JSON.stringify(columns) });
}
