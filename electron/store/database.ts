/**
 * The part of a SQLite connection that this room uses, so that only `open.ts` knows the library behind it (and so that
 * the types which the door hands to the windows drag in neither the library nor Node).
 */
export interface Database {
  prepare<Parameters extends unknown[], Row>(sql: string): Statement<Parameters, Row>;
  exec(sql: string): unknown;
  pragma(text: string, options?: { simple?: boolean }): unknown;
  close(): unknown;
  /** Copies the store, as it is at the end of copying, into another file while it goes on being used. */
  backup(file: string, options?: { progress: (pages: BackupPages) => number }): Promise<unknown>;
  readonly inTransaction: boolean;
}

/** How far a copy is; the answer is how many pages to copy next. */
export interface BackupPages {
  readonly totalPages: number;
  readonly remainingPages: number;
}

export interface Statement<Parameters extends unknown[], Row> {
  run(...parameters: Parameters): { changes: number; lastInsertRowid: number | bigint };
  get(...parameters: Parameters): Row | undefined;
  all(...parameters: Parameters): Row[];
}

const prepared = new WeakMap<Database, Map<string, Statement<never, unknown>>>();

/** Prepares a statement once per connection and text; every query of this room goes through here. */
export function statement<Parameters extends unknown[], Row = never>(
  db: Database,
  sql: string,
): Statement<Parameters, Row> {
  let known = prepared.get(db);
  if (known === undefined) {
    known = new Map();
    prepared.set(db, known);
  }
  let found = known.get(sql);
  if (found === undefined) {
    found = db.prepare<never, unknown>(sql);
    known.set(sql, found);
  }
  return found as unknown as Statement<Parameters, Row>;
}
