/**
 * A store that is read: what `store.db` is, and what every function takes that only looks. It can't be handed to one that
 * changes something: that is a mistake which the compiler finds.
 */
export interface ReadableDb {
  readonly inTransaction: boolean;
  /** Copies the store, as it is at the end of copying, into another file while it goes on being used. */
  backup(file: string, options?: { progress: (pages: BackupPages) => number }): Promise<unknown>;
}

/** A store that is written to: handed out by `store.write` alone. It can be read as well. */
export interface WritableDb extends ReadableDb {
  exec(sql: string): unknown;
}

/**
 * The part of a SQLite connection that this room uses, so that only `connect.ts` knows the library behind it (and so that
 * the types which the door hands to the windows drag in neither the library nor Node). Only what opens, guards, copies
 * or wipes a store's file takes it.
 */
export interface Database extends WritableDb {
  prepare<Parameters extends unknown[], Row>(sql: string): Statement<Parameters, Row>;
  pragma(text: string, options?: { simple?: boolean }): unknown;
  close(): unknown;
}

/** How far a copy is; the answer is how many pages to copy next. */
export interface BackupPages {
  readonly totalPages: number;
  readonly remainingPages: number;
}

/** A statement that asks. */
export interface Question<Parameters extends unknown[], Row> {
  get(...parameters: Parameters): Row | undefined;
  all(...parameters: Parameters): Row[];
}

/** A statement that asks or changes. */
export interface Statement<Parameters extends unknown[], Row> extends Question<Parameters, Row> {
  /** Whether it changes nothing, as SQLite says. */
  readonly readonly: boolean;
  run(...parameters: Parameters): { changes: number; lastInsertRowid: number | bigint };
}

const prepared = new WeakMap<ReadableDb, Map<string, Statement<never, unknown>>>();

/**
 * Prepares a statement once per connection and text; every query of this room goes through here. Whoever only reads gets
 * one that only asks.
 */
export function statement<Parameters extends unknown[], Row = never>(
  db: WritableDb,
  sql: string,
): Statement<Parameters, Row>;
export function statement<Parameters extends unknown[], Row = never>(
  db: ReadableDb,
  sql: string,
): Question<Parameters, Row>;
export function statement<Parameters extends unknown[], Row = never>(
  db: ReadableDb,
  sql: string,
): Statement<Parameters, Row> {
  let known = prepared.get(db);
  if (known === undefined) {
    known = new Map();
    prepared.set(db, known);
  }
  let found = known.get(sql);
  if (found === undefined) {
    // Every store's handle is its connection, by whichever type it was handed out.
    found = (db as Database).prepare<never, unknown>(sql);
    known.set(sql, found);
  }
  return found as unknown as Statement<Parameters, Row>;
}

/** A setting of the connection, or a number in the file's head: `user_version`, say. */
export function setting(db: ReadableDb, name: string): string | number {
  // With a value or an argument a pragma would change something.
  if (!/^[a-z_]+$/.test(name)) throw new Error(`${name} is no setting's name`);
  return (db as Database).pragma(name, { simple: true }) as string | number;
}
