import { closeSync, openSync, statSync } from "node:fs";
import type { Seal } from "../../domain/backups/records.ts";
import { syncFile } from "../../files/through.ts";
import type { Database } from "../connection/database.ts";
import { sameSum, takenIn } from "./laid-over.ts";
import { checkLog, frameHeaderBytes, headerBytes, type LogState, saltOf } from "./log-check.ts";
import { NotAsSealed, type PageSums, pagesInTurn, readPageSums, sumsAfter } from "./page-sums.ts";
import {
  closeGuardFiles,
  type GuardFiles,
  type Guards,
  logFile,
  makeGuardFiles,
  noteTally,
  openGuardFiles,
  readGuards,
  syncTally,
  writeSeal,
} from "./seal.ts";

/** Keeps the seal and tally of one open store in step with its file. */
export interface Guard {
  /** Tallies the log's length after a commit, and checkpoints a long log. */
  committed(): void;
  /**
   * Handles a commit that failed and was rolled back: the bytes it left in the log mean nothing. A checkpoint clears
   * them away and, on a full disk, makes room.
   */
  failed(): void;
  /**
   * Checkpoints the log, under a seal of the result. `shut`: no more commits follow.
   * @throws when something is reading the store, when the disk refuses, or when file or log are not as they were left:
   * then nothing is sealed, and the next start reports it.
   */
  bringIn(shut?: boolean): void;
  /** Tries `bringIn` where nothing depends on it: a failure is logged, and retried after the next commit. */
  tidy(shut?: boolean): void;
  /**
   * Puts checkpoints off that follow a commit while another thread of this program reads the store: each would wait for the
   * reader in vain. Returns what ends that.
   */
  rest(): () => void;
  /** Closes the files. Close the connection first: its locks go when they are closed. */
  close(): void;
}

/** A quarter of what SQLite takes by itself: no entry waits for more than so many pages (256) to be summed and laid over. */
const longLog = 1024 * 1024;
/** Longest time (ms) that an outside reader may hold up a checkpoint, and every station with it. */
const patience = 100;

/** Thrown while another program reads the file. That passes; retrying at each commit would slow down every one. */
class BeingRead extends Error {}

const guards = new WeakMap<Database, Guard>();

export function guardOf(db: Database): Guard | undefined {
  return guards.get(db);
}

/** Checkpoints the log into the file. Does nothing without a guard (a store in memory). Never inside a transaction. */
export function bringLogIn(db: Database): void {
  guards.get(db)?.bringIn();
}

/**
 * Makes the guard of a store that has just been connected. File and log were proved, or a person has accepted them: the
 * first seal is made from them as they are.
 * @param proved the sums of the pages of a file that its seal proved; null: all of them are read for the first seal
 */
export function guardStore(db: Database, file: string, proved: PageSums | null): Guard {
  // Held until the connection is closed: closing it earlier would take SQLite's lock of the file away, and another
  // program's SQLite that closes the file would believe itself alone and delete the log.
  const held = openSync(file, "r");
  let files: GuardFiles | undefined;
  let number = 0;
  /** The sums of the pages under the newest seal. */
  let sums = proved;
  /** The page after the last one that a checkpoint looked at in its turn. */
  let from = 0;
  let salt: string | null = null;
  /** True once the log on the disk shows that a commit was answered since the seal, and which log. */
  let synced = false;
  /** Bytes of the log at the last look. */
  let known = 0;
  /** True when the log's length means nothing: a checkpoint or a commit failed half way. */
  let inexact = false;
  let untidy = false;
  let limit = longLog;
  let resting = 0;

  function bringIn(shut = false): void {
    inexact = true;
    const log = checkLog(logFile(file));
    const upTo = lengthOf(db, log.pageBytes);
    if (upTo > 0 && !log.ends.includes(upTo)) throw new Error("the store's log is not as it was written");
    const before = readGuards(file);
    const next = sumsUnder(before.seal, log, upTo);
    // One more than the tally's number, not the seal's: a failing checkpoint may be retried many times.
    number = 1 + (typeof before.seal === "string" ? 0 : numberIn(before.tally));
    files = seal(before, {
      number,
      file: next.sum,
      log: upTo === 0 || log.salt === null ? null : { salt: log.salt, bytes: upTo },
    });
    [sums, synced] = [next, false];
    emptyLog(db);
    // SQLite does not wait for that; after a power cut the old log would come back under a tally that doesn't know it.
    syncFile(logFile(file));
    noteTally(files, { number, log: null, shut });
    syncTally(files);
    [salt, known, inexact, untidy, limit] = [null, 0, false, false, longLog];
  }

  /** Returns the sums of the pages once so much of the log is laid over the file. @throws NotAsSealed */
  function sumsUnder(sealed: Guards["seal"], log: LogState, upTo: number): PageSums {
    const all = (until: number) => readPageSums(held, log, until, pageBytesOf(db));
    if (typeof sealed === "string" || (files === undefined && sums === null)) return all(upTo);
    const taken = takenIn(sealed, log);
    // A seal whose writing failed may be on the disk or not: then all of the file is read again.
    const known = sums !== null && sameSum(sums.sum, sealed.file) ? sums : all(taken);
    if (!sameSum(known.sum, sealed.file)) throw new NotAsSealed();
    const after = sumsAfter(known, held, log, { taken, upTo, from });
    from += pagesInTurn;
    return after;
  }

  function seal({ seal: sealed, tally }: Guards, next: Seal): GuardFiles {
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
    // The commit is safe in the log already: nothing here may turn its answer into a failure.
    let bytes = known;
    try {
      bytes = inexact ? lengthOf(db, pageBytesOf(db)) : statSync(logFile(file)).size;
      note(bytes);
      if (resting === 0 && (untidy || bytes >= limit)) bringIn();
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
    rest() {
      resting += 1;
      let ended = false;
      return () => {
        if (!ended) resting -= 1;
        ended = true;
      };
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

function numberIn(kept: { number: number } | string): number {
  return typeof kept === "string" ? 0 : kept.number;
}

/** Returns the length of the log's commits as SQLite knows them; a rolled-back one may lie behind them. */
function lengthOf(db: Database, pageBytes: number): number {
  const [answer] = db.pragma("wal_checkpoint(NOOP)") as { log: number }[];
  const frames = answer?.log ?? 0;
  return frames <= 0 ? 0 : headerBytes + frames * (frameHeaderBytes + pageBytes);
}

function pageBytesOf(db: Database): number {
  return Number(db.pragma("page_size", { simple: true }));
}

/** Checkpoints the log and truncates it to nothing. */
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
