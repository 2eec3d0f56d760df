import { findDamage, findWrongMark } from "./checks.ts";
import { pragmas } from "./connect.ts";
import { allRows, firstRow, type ReadableDb, setting } from "./database.ts";

/** Facts about a store for a report whose reader must not see its content: settings, counts and checks. */
export interface StoreFacts {
  /** The number of its newest migration. */
  readonly version: number;
  readonly settings: Readonly<Record<string, string | number>>;
  /** Row counts by table. */
  readonly rows: Readonly<Record<string, number>>;
  /** The result of SQLite's own checks; "ok" when they find nothing. */
  readonly check: string;
  /** True if the newest marks follow from their attempts. */
  readonly marksFollow: boolean;
}

/** The number of newest marks to score again; a report must not keep the desk waiting. */
const marksLookedAt = 200;

/** Reads the facts of an open store. Writes nothing. */
export function factsOf(db: ReadableDb): StoreFacts {
  const tables = allRows<{ name: string }>(
    db,
    "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
  );
  return {
    version: Number(setting(db, "user_version")),
    settings: Object.fromEntries(pragmas.map(([name]) => [name, setting(db, name)])),
    rows: Object.fromEntries(tables.map(({ name }) => [name, rowsOf(db, name)])),
    check: findDamage(db) ?? "ok",
    marksFollow: findWrongMark(db, marksLookedAt) === null,
  };
}

/** Counts a table's rows. The name comes from the store's own list of tables, with its quotes doubled for SQL. */
function rowsOf(db: ReadableDb, table: string): number {
  const sql = `SELECT count(*) AS count FROM "${table.replaceAll('"', '""')}"`;
  return firstRow<{ count: number }>(db, sql)?.count ?? 0;
}
