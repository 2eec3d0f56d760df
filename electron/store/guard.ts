import { closeSync, statSync } from "node:fs";
import type { Database } from "./database.ts";
import { fileSum, logFile, noteTally, openTally, readSeal, writeSeal } from "./seal.ts";

/** Keeps seal and tally of one open store in step with its file. */
export interface Guard {
  /** After a commit: how far the log reaches now; brings a long log into the file. */
  committed(): void;
  /**
   * After a commit that failed and was rolled back: what it left in the log says nothing. Bringing the log into the file
   * clears that away, and on a full disk makes room.
   */
  failed(): void;
  /** Runs work that may change the file itself; the seal is open meanwhile, and made anew once it is done. */
  changing<Result>(work: () => Result): Result;
  close(): void;
}

/** As SQLite's own default: about a thousand pages. */
const longLog = 4 * 1024 * 1024;

const guards = new WeakMap<Database, Guard>();

/** Runs work that changes the store's file itself (a checkpoint, VACUUM). Never inside a transaction. */
export function whileFileChanges<Result>(db: Database, work: () => Result): Result {
  const guard = guards.get(db);
  return guard === undefined ? work() : guard.changing(work);
}

export function guardOf(db: Database): Guard | undefined {
  return guards.get(db);
}

/**
 * Makes the guard of a store that has just been connected; its seal is open until `changing` has run once. Without a
 * guard (a store in memory) nothing is kept.
 */
export function guardStore(db: Database, file: string): Guard {
  let { number } = readSeal(file) ?? { number: 0 };
  let tally: number | undefined;
  let untidy = false;
  let limit = longLog;

  function changing<Result>(work: () => Result): Result {
    number += 1;
    writeSeal(file, { number, file: null });
    const result = work();
    emptyLog(db);
    writeSeal(file, { number, file: fileSum(file) });
    tally ??= openTally(file);
    noteTally(tally, { number, bytes: 0 });
    untidy = false;
    limit = longLog;
    return result;
  }

  function committed(): void {
    // What was committed is safe in the log already: nothing here may turn the answer into a failure.
    let bytes = 0;
    try {
      bytes = statSync(logFile(file)).size;
      if (tally !== undefined && !untidy) noteTally(tally, { number, bytes });
      if (untidy || bytes >= limit) changing(() => {});
    } catch (error) {
      limit = bytes + longLog;
      console.error("The store's log could not be brought into its file yet:", error);
    }
  }

  const guard: Guard = {
    committed,
    changing,
    failed() {
      untidy = true;
      try {
        changing(() => {});
      } catch (error) {
        console.error("The store's log could not be cleared after a failure:", error);
      }
    },
    close() {
      guards.delete(db);
      if (tally !== undefined) closeSync(tally);
    },
  };
  guards.set(db, guard);
  return guard;
}

/** Brings the log into the file and cuts it to nothing. */
function emptyLog(db: Database): void {
  const [answer] = db.pragma("wal_checkpoint(TRUNCATE)") as { busy: number }[];
  if (answer?.busy !== 0) throw new Error("the store is being read just now");
}
