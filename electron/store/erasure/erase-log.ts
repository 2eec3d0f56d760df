import { allRows, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** The record that somebody was erased: when and by whom (initials), never whom. */
export interface Erasure {
  /** Made by the client, so that a retry is recognised. */
  readonly id: string;
  readonly at: string;
  readonly by: string;
}

export interface KeptErasure extends Erasure {
  /** True if the file has been rewritten since, so that no page of it holds the erased data. */
  readonly wiped: boolean;
}

interface ErasureRow extends Erasure {
  readonly wiped: number;
}

const columns = "id, at, erased_by AS by, wiped";

function asErasure(row: ErasureRow): KeptErasure {
  return { ...row, wiped: row.wiped === 1 };
}

/** Returns all erasures, newest first. */
export function allErasures(db: ReadableDb): KeptErasure[] {
  return allRows<ErasureRow>(db, `SELECT ${columns} FROM erasure ORDER BY at DESC, id`).map(asErasure);
}

export function erasureById(db: ReadableDb, id: string): KeptErasure | undefined {
  const row = firstRow<ErasureRow>(db, `SELECT ${columns} FROM erasure WHERE id = @id`, { id });
  return row === undefined ? undefined : asErasure(row);
}

/** True if the file still has to be rewritten after an erasure. */
export function wipeIsDue(db: ReadableDb): boolean {
  return firstRow(db, "SELECT id FROM erasure WHERE wiped = 0 LIMIT 1") !== undefined;
}

/** Notes that the file was rewritten. A write of its own, since a file can't be rewritten inside a transaction. */
export function noteWiped(db: WritableDb): void {
  db.exec("UPDATE erasure SET wiped = 1 WHERE wiped = 0");
}
