import { statSync } from "node:fs";
import SqliteDatabase from "better-sqlite3";
import type { Seal } from "../domain/backups/records.ts";
import { findDamage, findWrongMark } from "./checks.ts";
import type { Database } from "./database.ts";
import { wipeIsDue } from "./erase-log.ts";
import { writeAnew } from "./erase-wipe.ts";
import { guardStore } from "./guard.ts";
import { checkLog } from "./log-check.ts";
import { migrations } from "./migrations/list.ts";
import { StoreRefused } from "./refused.ts";
import { fileSum, logFile, readSeal, readTally } from "./seal.ts";
import { finishRestore } from "./set-aside.ts";
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
  // The file changes when `guard.ts` says so, and the log holds commits alone, so that its length can be kept in tally.
  ["wal_autocheckpoint", "0", 0],
  ["cache_spill", "OFF", 0],
];

/** Where the store is, and (for a runtime that needs its own build) which native library opens it. */
export interface StoreLocation {
  readonly file: string;
  readonly nativeBinding?: string;
  /** A person has seen why it was refused (`acceptable` reasons alone) and wants it as it is. */
  readonly accepted?: boolean;
}

/** How many marks are scored again at a start: a sample where the file's seal holds, all where nothing is proved. */
const sampleOfMarks = 200;
const allMarks = 1e9;

/**
 * Opens the store, making a new one where there is no file, and brings an older one up to date.
 * @throws StoreRefused when the file is another program's, damaged, not as it was left, or from a newer version of this
 * program; nothing is touched then.
 */
export function openStore(location: StoreLocation): Store {
  const inMemory = location.file === ":memory:";
  if (!inMemory) finishRestore(location.file);
  if (!inMemory) inspect(location);
  const db = connect(location);
  try {
    if (inMemory) prepare(db);
    else guardStore(db, location.file).changing(() => prepare(db));
    finishErasures(db);
  } catch (error) {
    db.close();
    throw error;
  }
  return createStore(db);
}

function prepare(db: Database): void {
  setPragmas(db);
  migrate(db);
}

/** A connection to a copy or a backup's content, as it is: nothing is set, kept in step or brought up to date. */
export function connectPlainly(location: StoreLocation): Database {
  return connect(location);
}

function connect(location: StoreLocation, readonly = false): Database {
  const options = location.nativeBinding === undefined ? {} : { nativeBinding: location.nativeBinding };
  return new SqliteDatabase(location.file, { ...options, readonly });
}

/**
 * Looks at what is there without writing: whose it is, which version made it, whether it is whole, and whether it is as
 * it was left. Where there is nothing, there must never have been anything.
 */
export function inspect(location: StoreLocation): void {
  const { file } = location;
  const seal = readSeal(file);
  const there = statSync(file, { throwIfNoEntry: false });
  if (there?.isDirectory() === true) throw new Error(`${file} is a folder`);
  if ((there?.size ?? 0) === 0) {
    // A file of no bytes is what a first start leaves that was cut off; SQLite's own checks call it whole.
    if (seal?.file != null) throw new StoreRefused("gone");
    return;
  }
  const unproved = sealBroken(file, seal);
  try {
    lookInside(location, seal, unproved === null);
  } catch (error) {
    if (error instanceof StoreRefused) error.doubted = unproved !== null;
    throw error;
  }
  if (unproved !== null && location.accepted !== true) throw unproved;
}

function lookInside(location: StoreLocation, seal: Seal | undefined, asLeft: boolean): void {
  withReading(location, (db) => {
    if (isUnborn(db) && seal?.file == null) return;
    requireOurs(db);
    const proved = asLeft && seal?.file != null;
    const damage = findDamage(db) ?? findWrongMark(db, proved ? sampleOfMarks : allMarks);
    if (damage !== null) throw new StoreRefused("damaged", undefined, damage);
  });
}

/** Reads a store without writing to it; what SQLite says of damage becomes a refusal. */
export function withReading<Result>(location: StoreLocation, read: (db: Database) => Result): Result {
  let db: Database | undefined;
  try {
    db = connect(location, true);
    return read(db);
  } catch (error) {
    throw asRefusal(error);
  } finally {
    db?.close();
  }
}

/** What a first start leaves that a full disk or a power cut ended: a database of nothing, nobody's yet. */
function isUnborn(db: Database): boolean {
  // A file too short to be a database counts as an empty one with SQLite; it is somebody's, and not ours.
  if (Number(db.pragma("page_count", { simple: true })) === 0) return false;
  const [id, version] = ["application_id", "user_version"].map((name) => db.pragma(name, { simple: true }));
  const sql = "SELECT count(*) AS count FROM sqlite_schema";
  return id === 0 && version === 0 && db.prepare<[], { count: number }>(sql).get()?.count === 0;
}

/** @throws StoreRefused when it is another program's, or a newer version's. */
export function requireOurs(db: Database): void {
  const version = Number(db.pragma("user_version", { simple: true }));
  if (db.pragma("application_id", { simple: true }) !== applicationId) throw new StoreRefused("foreign");
  if (version > migrations.length) throw new StoreRefused("newer", { version, known: migrations.length });
}

/** What seal, log and tally say against the store; null where nothing does, or where there is no proof either way. */
function sealBroken(file: string, seal: Seal | undefined): StoreRefused | null {
  const log = checkLog(logFile(file));
  if (log.spoilt) return new StoreRefused("shortened", undefined, "the log is spoilt in its middle");
  if (seal?.file == null) return null;
  const now = fileSum(file);
  if (now.sha256 !== seal.file.sha256) return new StoreRefused("changed");
  const tally = readTally(file);
  if (tally?.number !== seal.number || tally.bytes <= log.committed) return null;
  return new StoreRefused("shortened", undefined, `${tally.bytes - log.committed} bytes of the log are lost`);
}

/** Reading what is there fails in as many ways as there are of being damaged; a lack of rights is not among them. */
function asRefusal(error: unknown): unknown {
  if (error instanceof StoreRefused) return error;
  const code = error instanceof SqliteDatabase.SqliteError ? error.code : "";
  if (/^SQLITE_(?:CANTOPEN|READONLY|PERM|BUSY|FULL|NOMEM)/.test(code)) return error;
  if (code === "SQLITE_NOTADB") return new StoreRefused("foreign");
  const detail = error instanceof Error ? error.message : String(error);
  return new StoreRefused("damaged", undefined, detail);
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
