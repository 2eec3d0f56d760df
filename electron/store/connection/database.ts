/**
 * A store to read from: the type of `store.db`, and the parameter of every function that only reads. The compiler
 * refuses it where a function writes.
 */
export interface ReadableDb {
  readonly inTransaction: boolean;
  /** Copies the store into another file, as it is when the copy ends, while it stays in use. */
  backup(file: string, options?: { progress: (pages: BackupPages) => number }): Promise<unknown>;
}

/** A store to write to and read from. Only `store.write` hands it out. */
export interface WritableDb extends ReadableDb {
  exec(sql: string): unknown;
}

/**
 * The part of a SQLite connection that this room uses, so that only `connect.ts` knows the library behind it, and so
 * that the API's types bring neither the library nor Node into the windows. Only code that opens, guards, copies or
 * wipes a store's file takes it.
 */
export interface Database extends WritableDb {
  prepare<Parameters extends unknown[], Row>(sql: string): Statement<Parameters, Row>;
  pragma(text: string, options?: { simple?: boolean }): unknown;
  close(): unknown;
}

/** The progress of a copy; the callback returns how many pages to copy next. */
interface BackupPages {
  readonly totalPages: number;
  readonly remainingPages: number;
}

interface Statement<Parameters extends unknown[], Row> {
  /** True if the statement changes nothing, as SQLite reports. */
  readonly readonly: boolean;
  run(...parameters: Parameters): Changed;
  get(...parameters: Parameters): Row | undefined;
  all(...parameters: Parameters): Row[];
}

/** The result of a statement that writes. */
export interface Changed {
  readonly changes: number;
  readonly lastInsertRowid: number | bigint;
}

/** The values of a statement's named parameters (`@name`). */
export type Values = Readonly<Record<string, string | number | null>>;

/** The same of a statement that writes, which may have bytes too. */
type ValuesToWrite = Readonly<Record<string, string | number | null | Uint8Array>>;

/** Returns every row of a query. */
export function allRows<Row>(db: ReadableDb, sql: string, values: Values = {}): Row[] {
  return question<Row>(db, sql).all(values);
}

/** Returns the first row of a query; undefined when there is none. */
export function firstRow<Row>(db: ReadableDb, sql: string, values: Values = {}): Row | undefined {
  return question<Row>(db, sql).get(values);
}

/** Runs a statement that writes, inside the caller's transaction; refused outside of one. */
export function execute(db: WritableDb, sql: string, values: ValuesToWrite = {}): Changed {
  if (!db.inTransaction) throw new Error("only what runs inside store.write changes something");
  return prepared(db, sql).run(values);
}

/** Reads a setting of the connection or a number in the file's header, such as `user_version`. */
export function setting(db: ReadableDb, name: string): string | number {
  // With a value or an argument, a pragma would write.
  if (!/^[a-z_]+$/.test(name)) throw new Error(`${name} is no setting's name`);
  return connectionOf(db).pragma(name, { simple: true }) as string | number;
}

/** Prepares a query and refuses one that writes: types can't see into its text, but SQLite can. */
function question<Row>(db: ReadableDb, sql: string): Statement<[ValuesToWrite], Row> {
  const found = prepared(db, sql);
  if (!found.readonly) throw new Error("a query changes nothing");
  return found as Statement<[ValuesToWrite], Row>;
}

const statements = new WeakMap<ReadableDb, Map<string, Statement<[ValuesToWrite], unknown>>>();

/** Prepares a statement once per connection and text; every statement of this room goes through here. */
function prepared(db: ReadableDb, sql: string): Statement<[ValuesToWrite], unknown> {
  let known = statements.get(db);
  if (known === undefined) {
    known = new Map();
    statements.set(db, known);
  }
  let found = known.get(sql);
  if (found === undefined) {
    found = connectionOf(db).prepare<[ValuesToWrite], unknown>(sql);
    known.set(sql, found);
  }
  return found;
}

/** Returns the connection behind a store's handle, whichever type it was handed out as. */
function connectionOf(db: ReadableDb): Database {
  return db as Database;
}
