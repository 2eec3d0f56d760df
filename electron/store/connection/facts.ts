import { findDamage, findWrongMark } from "./checks.ts";
import { pragmas } from "./connect.ts";
import { allRows, firstRow, type ReadableDb, setting } from "./database.ts";

/** What can be told of a store to somebody who must not see what is in it: settings, counts and checks. */
export interface StoreFacts {
  /** The number of its newest migration. */
  readonly version: number;
  readonly settings: Readonly<Record<string, string | number>>;
  /** How many rows each table has. */
  readonly rows: Readonly<Record<string, number>>;
  /** What SQLite's own checks say; "ok" where they find nothing. */
  readonly check: string;
  /** Whether the newest marks follow from their attempts. */
  readonly marksFollow: boolean;
}

/** Marks that are scored again, the newest; a report must not keep the desk waiting. */
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

/** The name comes from the store's own list of tables, with its quotes doubled as SQL wants them. */
function rowsOf(db: ReadableDb, table: string): number {
  const sql = `SELECT count(*) AS count FROM "${table.replaceAll('"', '""')}"`;
  return firstRow<{ count: number }>(db, sql)?.count ?? 0;
}
