import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** A bundle that was made to be shared: its day, time, strictness and hash, never its rows. */
export interface Export {
  readonly dayId: number;
  readonly at: string;
  readonly k: number;
  /** SHA-256 of the whole file, in hexadecimal digits. */
  readonly sha256: string;
}

/** An entry of the export log. One that was not saved in the end shared nothing. */
export interface LoggedExport extends Export {
  readonly id: number;
  readonly saved: boolean;
}

const columns = `export_log.id, day_id AS dayId, export_log.at, k, sha256, export_unsaved.export_id IS NULL AS saved`;
const source = "export_log LEFT JOIN export_unsaved ON export_unsaved.export_id = export_log.id";

/** Returns every export, newest first. */
export function allExports(db: ReadableDb): LoggedExport[] {
  const sql = `SELECT ${columns} FROM ${source} ORDER BY export_log.id DESC`;
  const rows = allRows<Omit<LoggedExport, "saved"> & { saved: number }>(db, sql);
  return rows.map((entry) => ({ ...entry, saved: entry.saved === 1 }));
}

/**
 * Notes an export and returns its id; null for the same bytes of the same day (a retry, a second copy), which are one
 * entry. Nothing about this copy may then change the entry of the first.
 */
export function noteExport(db: WritableDb, entry: Export): number | null {
  const sql = `INSERT INTO export_log (day_id, at, k, sha256)
    SELECT @dayId, @at, @k, @sha256
    WHERE NOT EXISTS (SELECT 1 FROM ${source}
      WHERE day_id = @dayId AND sha256 = @sha256 AND export_unsaved.export_id IS NULL)`;
  const { changes, lastInsertRowid } = execute(db, sql, { ...entry });
  return changes === 0 ? null : Number(lastInsertRowid);
}

/** Notes that an exported bundle was not saved anywhere. The same again changes nothing. */
export function noteUnsaved(db: WritableDb, exportId: number, at: string): void {
  execute(db, "INSERT OR IGNORE INTO export_unsaved (export_id, at) VALUES (@exportId, @at)", {
    exportId,
    at,
  });
}
