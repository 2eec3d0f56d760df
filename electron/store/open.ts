import { existsSync, statSync } from "node:fs";
import SqliteDatabase from "better-sqlite3";
import { type Sentence, sentence } from "../domain/words.ts";
import type { Database } from "./database.ts";
import { wipeIsDue } from "./erase-log.ts";
import { writeAnew } from "./erase-wipe.ts";
import { migrations } from "./migrations/list.ts";
import { createStore, type Store } from "./store.ts";

/** Marks a SQLite file as ours ("Tape" in ASCII), so that another program's file is never written to. */
export const applicationId = 0x54617065;

/** What every connection must read back after it is set up; SQLite ignores what it does not know, in silence. */
export const pragmas: readonly (readonly [name: string, set: string, read: string | number])[] = [
  ["journal_mode", "WAL", "wal"],
  // After WAL: the library lowers it to NORMAL, which may lose the last commits at a power cut.
  ["synchronous", "FULL", 2],
  ["fullfsync", "ON", 1],
  ["foreign_keys", "ON", 1],
  // Without it INSERT OR REPLACE slips past the triggers that refuse deletion.
  ["recursive_triggers", "ON", 1],
  ["trusted_schema", "OFF", 0],
  ["cell_size_check", "ON", 1],
  ["secure_delete", "ON", 1],
  ["busy_timeout", "5000", 5000],
];

/** The store can't be opened; the file has not been touched. */
export class StoreRefused extends Error {
  readonly reason: "newer" | "foreign" | "damaged";
  readonly sentence: Sentence;
  constructor(reason: StoreRefused["reason"], values?: Sentence["values"]) {
    super(`store refused: ${reason}`);
    this.reason = reason;
    this.sentence = sentence(`store.${reason}`, values);
  }
}

/** Where the store is, and (for a runtime that needs its own build) which native library opens it. */
export interface StoreLocation {
  readonly file: string;
  readonly nativeBinding?: string;
}

/**
 * Opens the store, making a new one where there is no file, and brings an older one up to date.
 * @throws StoreRefused when the file is another program's, damaged, or from a newer version of this program.
 */
export function openStore(location: StoreLocation): Store {
  if (location.file !== ":memory:" && existsSync(location.file) && statSync(location.file).size > 0) {
    inspect(location);
  }
  const db = connect(location);
  try {
    setPragmas(db);
    migrate(db);
    finishErasures(db);
  } catch (error) {
    db.close();
    throw error;
  }
  return createStore(db);
}

function connect(location: StoreLocation, readonly = false): Database {
  const options = location.nativeBinding === undefined ? {} : { nativeBinding: location.nativeBinding };
  return new SqliteDatabase(location.file, { ...options, readonly });
}

/** Looks at an existing file without writing: whose it is, which version made it, and whether it is whole. */
function inspect(location: StoreLocation): void {
  const db = connect(location, true);
  try {
    const version = Number(db.pragma("user_version", { simple: true }));
    if (db.pragma("application_id", { simple: true }) !== applicationId) throw new StoreRefused("foreign");
    if (version > migrations.length) {
      throw new StoreRefused("newer", { version, known: migrations.length });
    }
    if (db.pragma("quick_check(1)", { simple: true }) !== "ok") throw new StoreRefused("damaged");
  } catch (error) {
    throw asRefusal(error);
  } finally {
    db.close();
  }
}

function asRefusal(error: unknown): unknown {
  const code = error instanceof SqliteDatabase.SqliteError ? error.code : "";
  if (code.startsWith("SQLITE_CORRUPT")) return new StoreRefused("damaged");
  if (code === "SQLITE_NOTADB") return new StoreRefused("foreign");
  return error;
}

function setPragmas(db: Database): void {
  for (const [name, value] of pragmas) db.pragma(`${name} = ${value}`);
  for (const [name, , expected] of pragmas) {
    const read = db.pragma(name, { simple: true });
    // An in-memory store has no journal file; everything else must hold.
    if (read !== expected && !(name === "journal_mode" && read === "memory")) {
      throw new Error(`The store's setting ${name} is ${String(read)} and must be ${String(expected)}.`);
    }
  }
}

/** Writes the file anew where the program ended between an erasure and that. */
function finishErasures(db: Database): void {
  if (!wipeIsDue(db)) return;
  try {
    writeAnew(db);
  } catch (error) {
    // The day must go on, on a full disk too: it stays due, the desk shows that, and the next start tries again.
    console.error("The store could not be written anew after an erasure:", error);
  }
}

function migrate(db: Database): void {
  const from = Number(db.pragma("user_version", { simple: true }));
  for (const [index, sql] of migrations.entries()) {
    if (index < from) continue;
    // The version is set in the same transaction: a crash leaves the step done or not done, never half.
    db.exec(
      `BEGIN IMMEDIATE; ${sql}; PRAGMA application_id = ${applicationId}; PRAGMA user_version = ${index + 1}; COMMIT;`,
    );
  }
}
