import type { Holding } from "../../domain/backups/records.ts";
import { wipeIsDue } from "../erasure/erase-log.ts";
import { writeAnew } from "../erasure/erase-wipe.ts";
import { type Guard, guardStore } from "../keeping/guard.ts";
import { besides } from "../keeping/seal.ts";
import { migrations } from "../migrations/list.ts";
import { areByOtherRules, rebuildMarks } from "../tables/marks.ts";
import { findDamage, findWrongMark, holdingOf } from "./checks.ts";
import {
  asRefusal,
  connect,
  connectBytes,
  connectForUse,
  connectNothing,
  type StoreLocation,
  setPragmas,
} from "./connect.ts";
import type { Database } from "./database.ts";
import { applicationId, type Examined, examine, requireOurs, sampleOfMarks } from "./examine.ts";
import { makeFile } from "./new-file.ts";
import { makePrivate } from "./private.ts";
import { StoreRefused } from "./refused.ts";
import { createStore, type Store } from "./store.ts";

/**
 * Opens the store, makes a new one where there is no file, and migrates an older one.
 * @throws StoreRefused when the file is another program's, damaged, changed since it was closed, or from a newer
 * version of this program; nothing is touched then.
 * @param examined what an examination found a moment ago; left out: it is examined here
 */
export function openStore(location: StoreLocation, examined?: Examined): Store {
  if (location.file === ":memory:") return openInMemory(location);
  const found = examined ?? examine(location);
  if (found.is === "nothing") makeFile(location.file, (begun) => begin({ ...location, file: begun }));
  makePrivate(["", ...besides].map((part) => `${location.file}${part}`));
  const db = connectForUse(location);
  let guard: Guard | undefined;
  try {
    guard = guardStore(db, location.file, found.sums);
    bringUpToDate(db, guard);
    return createStore(db);
  } catch (error) {
    db.close();
    guard?.close();
    throw error;
  }
}

/** The file of a store in which nothing is yet. The migrations make the same one each time, and take forty times as long. */
let empty: Buffer | undefined;

function openInMemory(location: StoreLocation): Store {
  empty ??= emptyFile(location);
  const db = connectBytes(Buffer.from(empty), location);
  setPragmas(db);
  migrate(db);
  return createStore(db);
}

function emptyFile(location: StoreLocation): Buffer {
  const db = connectNothing(location);
  setPragmas(db);
  migrate(db);
  const bytes = db.serialize();
  db.close();
  return bytes;
}

/**
 * Changes the bytes of a store's file in memory, brought up to this version, and returns those of the file written anew:
 * what was taken out is on no page of it. Null where `work` returns false.
 * @throws StoreRefused or Error when the bytes are no whole store of ours.
 */
export function rewriteBytes(
  bytes: Buffer,
  location: StoreLocation,
  work: (store: Store) => boolean,
): { readonly store: Buffer; readonly holding: Holding } | null {
  const db = connectBytes(bytes, location);
  try {
    setPragmas(db);
    requireOurs(db);
    requireWhole(db);
    migrate(db);
    const store = createStore(db);
    if (!work(store)) return null;
    store.wipe();
    requireWhole(db);
    return { store: db.serialize(), holding: holdingOf(db) };
  } finally {
    db.close();
  }
}

function requireWhole(db: Database): void {
  const damage = findDamage(db) ?? findWrongMark(db, sampleOfMarks);
  if (damage !== null) throw new StoreRefused("damaged", undefined, damage);
}

/** Makes an empty store whose file is whole without its log. @throws on a disk with no room for that. */
function begin(location: StoreLocation): void {
  const db = connect(location);
  try {
    setPragmas(db);
    migrate(db);
    // Closing brings the log in as well, but says nothing when it can't, and leaves half of it in the file.
    db.pragma("wal_checkpoint(TRUNCATE)");
  } finally {
    db.close();
  }
}

/** Checkpoints the log and migrates. A full disk, or a reader from outside, only delays the checkpoint. */
function bringUpToDate(db: Database, guard: Guard): void {
  guard.tidy();
  if (migrate(db, guard.committed)) guard.tidy();
  finishErasures(db);
}

/** Rewrites the file if the program ended between an erasure and its rewrite. */
function finishErasures(db: Database): void {
  if (!wipeIsDue(db)) return;
  try {
    writeAnew(db);
  } catch (error) {
    // The day must go on, even on a full disk: the rewrite stays due, the desk shows that, and the next start tries
    // again.
    console.error("The store could not be written anew after an erasure:", error);
  }
}

/** Runs the missing migrations and makes marks by these rules, calling `after` after each; returns true if there were any. */
function migrate(db: Database, after = () => {}): boolean {
  const from = Number(db.pragma("user_version", { simple: true }));
  for (const [index, sql] of migrations.entries()) {
    if (index < from) continue;
    // The version is set in the same transaction: a crash leaves the step done or not done, never half.
    db.exec(
      `BEGIN IMMEDIATE; ${sql}; PRAGMA application_id = ${applicationId}; PRAGMA user_version = ${index + 1}; COMMIT;`,
    );
    after();
  }
  return scoreAnew(db, after) || from < migrations.length;
}

/**
 * Makes all marks again where the rules are not those by which they were made; returns true if there were any.
 * @throws StoreRefused when an attempt can't be read.
 */
function scoreAnew(db: Database, after: () => void): boolean {
  if (!areByOtherRules(db)) return false;
  db.exec("BEGIN IMMEDIATE");
  try {
    rebuildMarks(db);
    db.exec("COMMIT");
  } catch (error) {
    if (db.inTransaction) db.exec("ROLLBACK");
    throw asRefusal(error);
  }
  after();
  return true;
}
