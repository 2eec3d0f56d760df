import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** That a bundle of a day was made to leave the room: when, how strict, and which bytes; never the rows. */
export interface Export {
  readonly dayId: number;
  readonly at: string;
  readonly k: number;
  /** SHA-256 of the whole file, in hexadecimal digits. */
  readonly sha256: string;
}

/** An entry of the log. One that was not saved in the end has left nothing behind. */
export interface LoggedExport extends Export {
  readonly id: number;
  readonly saved: boolean;
}

const columns = `export_log.id, day_id AS dayId, export_log.at, k, sha256, export_unsaved.export_id IS NULL AS saved`;
const source = "export_log LEFT JOIN export_unsaved ON export_unsaved.export_id = export_log.id";

/** Everything that was made, newest first. */
export function allExports(db: ReadableDb): LoggedExport[] {
  const sql = `SELECT ${columns} FROM ${source} ORDER BY export_log.id DESC`;
  const rows = allRows<Omit<LoggedExport, "saved"> & { saved: number }>(db, sql);
  return rows.map((entry) => ({ ...entry, saved: entry.saved === 1 }));
}

/**
 * Notes an export and returns its id. The same bytes of the same day again (a retry, a second copy) are one entry: then
 * null, and nothing that is said of this copy may touch the entry of the first.
 */
export function noteExport(db: WritableDb, entry: Export): number | null {
  const sql = `INSERT INTO export_log (day_id, at, k, sha256)
    SELECT @dayId, @at, @k, @sha256
    WHERE NOT EXISTS (SELECT 1 FROM ${source}
      WHERE day_id = @dayId AND sha256 = @sha256 AND export_unsaved.export_id IS NULL)`;
  const { changes, lastInsertRowid } = execute(db, sql, { ...entry });
  return changes === 0 ? null : Number(lastInsertRowid);
}

/** Notes that a bundle that was made was not saved anywhere. Twice is once. */
export function noteUnsaved(db: WritableDb, exportId: number, at: string): void {
  execute(db, "INSERT OR IGNORE INTO export_unsaved (export_id, at) VALUES (@exportId, @at)", {
    exportId,
    at,
  });
}
