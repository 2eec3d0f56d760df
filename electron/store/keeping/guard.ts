import { closeSync, openSync, statSync } from "node:fs";
import type { Seal } from "../../domain/backups/records.ts";
import { syncFile } from "../../files/through.ts";
import type { Database } from "../connection/database.ts";
import { sameSum, sumLaidOver, takenIn } from "./laid-over.ts";
import { checkLog, frameHeaderBytes, headerBytes, type LogState, saltOf } from "./log-check.ts";
import {
  closeGuardFiles,
  type GuardFiles,
  logFile,
  makeGuardFiles,
  noteTally,
  openGuardFiles,
  readGuards,
  syncTally,
  writeSeal,
} from "./seal.ts";

/** Keeps seal and tally of one open store in step with its file. */
export interface Guard {
  /** After a commit: how far the log reaches now; brings a long log into the file. */
  committed(): void;
  /**
   * After a commit that failed and was rolled back: what it left in the log says nothing. Bringing the log into the file
   * clears that away, and on a full disk makes room.
   */
  failed(): void;
  /**
   * Brings the log into the file, under a seal of what comes of that. `shut`: nothing is committed any more.
   * @throws when something reads the store just now, when the disk does not take it, or when file or log are not as they
   * were left: then nothing is sealed over, and the next start says so.
   */
  bringIn(shut?: boolean): void;
  /** As that, where nothing depends on it: what went wrong is logged, and it is tried again after the next commit. */
  tidy(shut?: boolean): void;
  /** Lets go of the files; after the connection, whose locks would go with them. */
  close(): void;
}

/** As SQLite's own default: about a thousand pages. */
const longLog = 4 * 1024 * 1024;
/** ms that somebody who reads the file from outside may hold up a checkpoint, and everybody at the stations with it. */
const patience = 100;

/** Somebody reads the file from outside: that passes, and trying at each commit would hold up every one. */
class BeingRead extends Error {}

const guards = new WeakMap<Database, Guard>();

export function guardOf(db: Database): Guard | undefined {
  return guards.get(db);
}

/** Brings the log into the file; without a guard (a store in memory) there is none. Never inside a transaction. */
export function bringLogIn(db: Database): void {
  guards.get(db)?.bringIn();
}

/**
 * Makes the guard of a store that has just been connected. File and log were proved, or a person has accepted them: the
 * first seal is made of them as they are.
 */
export function guardStore(db: Database, file: string): Guard {
  // Held until the connection is closed: closing it earlier would take SQLite's lock of the file away, and another
  // program's SQLite that closes the file would believe itself alone and delete the log.
  const held = openSync(file, "r");
  let files: GuardFiles | undefined;
  let number = 0;
  let salt: string | null = null;
  /** Whether the disk knows that something was answered since the seal, and of which log. */
  let synced = false;
  /** Bytes of the log when it was last looked at. */
  let known = 0;
  /** The log's length says nothing: a checkpoint or a commit failed half way. */
  let inexact = false;
  let untidy = false;
  let limit = longLog;

  function bringIn(shut = false): void {
    inexact = true;
    const log = checkLog(logFile(file));
    const upTo = lengthOf(db, log.pageBytes);
    if (upTo > 0 && !log.ends.includes(upTo)) throw new Error("the store's log is not as it was written");
    const before = readGuards(file);
    if (files !== undefined) requireAsSealed(held, before.seal, log);
    // One more than the tally's, and not the seal's: a checkpoint that fails may be tried many times.
    number = 1 + (typeof before.seal === "string" ? 0 : numberIn(before.tally));
    files = seal(before, {
      number,
      file: sumLaidOver(held, log, upTo),
      log: upTo === 0 || log.salt === null ? null : { salt: log.salt, bytes: upTo },
    });
    synced = false;
    emptyLog(db);
    // SQLite does not wait for that, and after a power cut the log would come back under a tally that knows nothing of it.
    syncFile(logFile(file));
    noteTally(files, { number, log: null, shut });
    syncTally(files);
    [salt, known, inexact, untidy, limit] = [null, 0, false, false, longLog];
  }

  function seal({ seal: sealed, tally }: ReturnType<typeof readGuards>, next: Seal): GuardFiles {
    if (typeof sealed === "string" || typeof tally === "string" || tally.number === 0) {
      if (files !== undefined) closeGuardFiles(files);
      files = undefined;
      return makeGuardFiles(file, next);
    }
    files ??= openGuardFiles(file);
    writeSeal(files, next);
    return files;
  }

  function note(bytes: number): void {
    // A retry's transaction changes nothing, and may come before anything is in the log.
    if (files === undefined || bytes === 0) return;
    // Shorter than before: another program brought the log in, past every lock.
    if (bytes < known) number = numberIn(readGuards(file).seal);
    if (salt === null || inexact || bytes < known) salt = saltOf(logFile(file));
    known = bytes;
    noteTally(files, { number, log: salt === null ? null : { salt, bytes }, shut: false });
    if (!synced) syncTally(files);
    synced = true;
  }

  function committed(): void {
    // What was committed is safe in the log already: nothing here may turn the answer into a failure.
    let bytes = known;
    try {
      bytes = inexact ? lengthOf(db, pageBytesOf(db)) : statSync(logFile(file)).size;
      note(bytes);
      if (untidy || bytes >= limit) bringIn();
    } catch (error) {
      limit = bytes + longLog;
      console.error("The store's log could not be brought into its file yet:", error);
    }
  }

  function tidy(shut = false): void {
    try {
      bringIn(shut);
    } catch (error) {
      untidy = !(error instanceof BeingRead);
      console.error("The store's log could not be brought into its file yet:", error);
    }
  }

  const guard: Guard = {
    committed,
    bringIn,
    tidy,
    failed() {
      [untidy, inexact] = [true, true];
      tidy();
    },
    close() {
      guards.delete(db);
      if (files !== undefined) closeGuardFiles(files);
      closeSync(held);
    },
  };
  guards.set(db, guard);
  return guard;
}

function requireAsSealed(held: number, seal: ReturnType<typeof readGuards>["seal"], log: LogState): void {
  if (typeof seal === "string") return;
  if (sameSum(sumLaidOver(held, log, takenIn(seal, log)), seal.file)) return;
  throw new Error("the store's file is not as it was sealed");
}

function numberIn(kept: { number: number } | string): number {
  return typeof kept === "string" ? 0 : kept.number;
}

/** How far the log holds commits as SQLite knows them: one that failed and was rolled back may lie behind. */
function lengthOf(db: Database, pageBytes: number): number {
  const [answer] = db.pragma("wal_checkpoint(NOOP)") as { log: number }[];
  const frames = answer?.log ?? 0;
  return frames <= 0 ? 0 : headerBytes + frames * (frameHeaderBytes + pageBytes);
}

function pageBytesOf(db: Database): number {
  return Number(db.pragma("page_size", { simple: true }));
}

/** Brings the log into the file and cuts it to nothing. */
function emptyLog(db: Database): void {
  const usual = Number(db.pragma("busy_timeout", { simple: true }));
  db.pragma(`busy_timeout = ${patience}`);
  try {
    const [answer] = db.pragma("wal_checkpoint(TRUNCATE)") as { busy: number }[];
    if (answer?.busy !== 0) throw new BeingRead("the store is being read just now");
  } finally {
    db.pragma(`busy_timeout = ${usual}`);
  }
}
