import { type Database, statement } from "./database.ts";

/** That a bundle of a day left the room: when, how strict, and which bytes; never the rows. */
export interface Export {
  readonly dayId: number;
  readonly at: string;
  readonly k: number;
  /** SHA-256 of the whole file, in hexadecimal digits. */
  readonly sha256: string;
}

/** Everything that left, newest first. */
export function allExports(db: Database): Export[] {
  const sql = "SELECT day_id AS dayId, at, k, sha256 FROM export_log ORDER BY id DESC";
  return statement<[], Export>(db, sql).all();
}

/** Notes an export. The same bytes of the same day again (a retry, a second copy) are one entry. */
export function noteExport(db: Database, entry: Export): void {
  const sql = `INSERT INTO export_log (day_id, at, k, sha256)
    SELECT @dayId, @at, @k, @sha256
    WHERE NOT EXISTS (SELECT 1 FROM export_log WHERE day_id = @dayId AND sha256 = @sha256)`;
  statement<[Export]>(db, sql).run(entry);
}
