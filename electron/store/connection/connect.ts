import SqliteDatabase from "better-sqlite3";
import { contentOfStore } from "../keeping/laid-over.ts";
import { checkLog } from "../keeping/log-check.ts";
import { logFile } from "../keeping/seal.ts";
import type { Database } from "./database.ts";
import { markFile } from "./file-header.ts";
import { StoreRefused } from "./refused.ts";

/** Settings that every connection must read back after it is set up; SQLite silently ignores those it does not know. */
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
  // Only `guard.ts` says when the file changes, and the log holds nothing but commits, so that its length can be
  // tallied.
  ["wal_autocheckpoint", "0", 0],
  ["cache_spill", "OFF", 0],
];

/** The location of a store and, for a runtime that needs its own build, of the native library that opens it. */
export interface StoreLocation {
  readonly file: string;
  readonly nativeBinding?: string;
  /** The folder of its own backups, if any. They show that a store was here when the file is gone. */
  readonly backups?: string;
  /** True when a person saw the refusal (`acceptable` ones only) and wants the store as it is, or an empty one. */
  readonly accepted?: boolean;
}

/**
 * Opens a connection for use. On a disk with no room for the log's shared index (32 KB), the connection keeps the index
 * in memory; no other program can then read the file ("Use of WAL Without Shared-Memory", sqlite.org/wal.html).
 */
export function connectForUse(location: StoreLocation): Database {
  const shared = connect(location);
  try {
    setPragmas(shared);
    return shared;
  } catch (error) {
    shared.close();
    if (!/^SQLITE_(?:FULL|IOERR)/.test(String((error as { code?: unknown }).code))) throw error;
    console.error("The store's log could not be shared:", error);
  }
  const alone = connect(location);
  try {
    alone.pragma("locking_mode = EXCLUSIVE");
    setPragmas(alone);
    return alone;
  } catch (error) {
    alone.close();
    throw error;
  }
}

/** Opens a connection that only reads, to a store that may be in use: closing it brings nothing in. */
export function connectToRead(location: StoreLocation): Database {
  return new SqliteDatabase(location.file, { ...library(location), readonly: true });
}

/** Opens a bare connection: nothing is set, guarded or migrated. */
export function connect(location: StoreLocation): Database {
  return new SqliteDatabase(location.file, library(location));
}

function library({ nativeBinding }: StoreLocation): { nativeBinding?: string } {
  return nativeBinding === undefined ? {} : { nativeBinding };
}

/**
 * Reads a store that nothing has open, from memory. So no file beside it is made or changed, and a full disk doesn't
 * matter. Damage that SQLite reports becomes a refusal.
 */
export function withReading<Result>(location: StoreLocation, read: (db: Database) => Result): Result {
  let db: Database | undefined;
  try {
    const bytes = contentOfStore(location.file, checkLog(logFile(location.file)));
    db = new SqliteDatabase(markFile(bytes, "alone"), { ...library(location), readonly: true });
    return read(db);
  } catch (error) {
    throw asRefusal(error);
  } finally {
    db?.close();
  }
}

/** A connection to a store in memory, which can be written out as a file again. */
export interface InMemory extends Database {
  serialize(): Buffer;
}

/** Opens a bare connection to nothing at all in memory. */
export function connectNothing(location: StoreLocation): InMemory {
  return new SqliteDatabase(":memory:", library(location));
}

/** Opens the bytes of a store's file in memory, to write there: nothing of it is on a disk. The bytes are used up. */
export function connectBytes(bytes: Buffer, location: StoreLocation): InMemory {
  return new SqliteDatabase(markFile(bytes, "alone"), library(location));
}

/** Turns an error of reading into a refusal: damage shows in many ways. Missing permissions are no damage. */
export function asRefusal(error: unknown): unknown {
  if (error instanceof StoreRefused) return error;
  const code = String((error as { code?: unknown } | null)?.code ?? "");
  if (/^(?:SQLITE_(?:CANTOPEN|READONLY|PERM|BUSY|FULL|NOMEM)|EACCES|EPERM|EBUSY)/.test(code)) return error;
  if (code === "SQLITE_NOTADB") return new StoreRefused("foreign");
  const detail = error instanceof Error ? error.message : String(error);
  return new StoreRefused("damaged", undefined, detail);
}

/** @throws when a setting does not read back as it was set. */
export function setPragmas(db: Database): void {
  for (const [name, value] of pragmas) db.pragma(`${name} = ${value}`);
  for (const [name, , expected] of pragmas) {
    const read = db.pragma(name, { simple: true });
    // An in-memory store has no journal file; everything else must hold.
    if (read !== expected && !(name === "journal_mode" && read === "memory")) {
      throw new Error(`The store's setting ${name} is ${String(read)} and must be ${String(expected)}.`);
    }
  }
}
