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
interface BackupPages {
  readonly totalPages: number;
  readonly remainingPages: number;
}

interface Statement<Parameters extends unknown[], Row> {
  /** Whether it changes nothing, as SQLite says. */
  readonly readonly: boolean;
  run(...parameters: Parameters): Changed;
  get(...parameters: Parameters): Row | undefined;
  all(...parameters: Parameters): Row[];
}

/** What a statement that changes something has changed. */
export interface Changed {
  readonly changes: number;
  readonly lastInsertRowid: number | bigint;
}

/** What the names in a statement (`@name`) stand for. */
export type Values = Readonly<Record<string, string | number | null>>;

/** Every row that a query gives. */
export function allRows<Row>(db: ReadableDb, sql: string, values: Values = {}): Row[] {
  return question<Row>(db, sql).all(values);
}

/** The first row that a query gives; undefined when there is none. */
export function firstRow<Row>(db: ReadableDb, sql: string, values: Values = {}): Row | undefined {
  return question<Row>(db, sql).get(values);
}

/** Runs a statement that changes something. Part of the caller's transaction, without which it is refused. */
export function execute(db: WritableDb, sql: string, values: Values = {}): Changed {
  if (!db.inTransaction) throw new Error("only what runs inside store.write changes something");
  return prepared(db, sql).run(values);
}

/** A setting of the connection, or a number in the file's head: `user_version`, say. */
export function setting(db: ReadableDb, name: string): string | number {
  // With a value or an argument a pragma would change something.
  if (!/^[a-z_]+$/.test(name)) throw new Error(`${name} is no setting's name`);
  return connectionOf(db).pragma(name, { simple: true }) as string | number;
}

/** The types can't see into the text of a query; SQLite can. */
function question<Row>(db: ReadableDb, sql: string): Statement<[Values], Row> {
  const found = prepared(db, sql);
  if (!found.readonly) throw new Error("a query changes nothing");
  return found as Statement<[Values], Row>;
}

const statements = new WeakMap<ReadableDb, Map<string, Statement<[Values], unknown>>>();

/** Prepares a statement once per connection and text; every statement of this room goes through here. */
function prepared(db: ReadableDb, sql: string): Statement<[Values], unknown> {
  let known = statements.get(db);
  if (known === undefined) {
    known = new Map();
    statements.set(db, known);
  }
  let found = known.get(sql);
  if (found === undefined) {
    found = connectionOf(db).prepare<[Values], unknown>(sql);
    known.set(sql, found);
  }
  return found;
}

/** Every store's handle is its connection, by whichever type it was handed out. */
function connectionOf(db: ReadableDb): Database {
  return db as Database;
}
