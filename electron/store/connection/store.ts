import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { writeAnew } from "../erasure/erase-wipe.ts";
import { guardOf } from "../keeping/guard.ts";
import type { Database, ReadableDb, WritableDb } from "./database.ts";

/** What a change may concern; windows read again what they show of a topic. */
export const topics = ["day", "people", "entrants", "attempts", "calls", "heats", "references"] as const;
export type Topic = (typeof topics)[number];

/** One commit: its number since this store was opened, and what it concerned. */
export interface Commit {
  readonly seq: number;
  readonly topics: readonly Topic[];
}

/** An open store. Reading is by the functions of this room's files, `db` first; writing is by `write` alone. */
export interface Store {
  readonly db: ReadableDb;
  /**
   * Runs `work` in one transaction and, after the commit, announces `about`. A promise is refused by type: the
   * transaction would end before the work did.
   */
  write<Result>(about: readonly Topic[], work: (db: WritableDb) => Synchronous<Result>): Result;
  /** The number of the newest change. */
  seq(): number;
  /** Calls `listener` after each commit until the returned function is called. */
  listen(listener: (change: Commit) => void): () => void;
  /** Writes the file anew, so that nothing that was erased is left in it (`writeAnew`). Never inside `write`. */
  wipe(): void;
  close(): void;
}

type Synchronous<Result> = Result extends PromiseLike<unknown> ? never : Result;

export function createStore(db: Database): Store {
  const transaction = transactionsOn(db);
  const listeners = new Set<(change: Commit) => void>();
  let seq = 0;

  function write<Result>(about: readonly Topic[], work: (db: WritableDb) => Synchronous<Result>): Result {
    const result = transaction(() => work(db));
    // On the disk by now: `synchronous` is FULL.
    guardOf(db)?.committed();
    seq += 1;
    const change = { seq, topics: about };
    for (const listener of listeners) listener(change);
    return result;
  }

  return {
    db,
    write,
    seq: () => seq,
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    wipe: () => writeAnew(db),
    close() {
      const guard = guardOf(db);
      // A disk that is full keeps the log for the next start.
      guard?.tidy(true);
      db.close();
      guard?.close();
    },
  };
}

function transactionsOn(db: Database): <Result>(work: () => Result) => Result {
  const begin = db.prepare<[], never>("BEGIN IMMEDIATE");
  const commit = db.prepare<[], never>("COMMIT");
  return (work) => {
    begin.run();
    try {
      const result = work();
      commit.run();
      return result;
    } catch (error) {
      // A failed COMMIT may already have ended the transaction.
      if (db.inTransaction) db.exec("ROLLBACK");
      const told = asRefusal(error);
      if (told !== error) guardOf(db)?.failed();
      throw told;
    }
  };
}

/**
 * What the disk refused, as a sentence. Whether a commit that failed on its way to the disk is there or not is unknown:
 * the same ids again make it certain, and never double.
 */
function asRefusal(error: unknown): unknown {
  const code = String((error as { code?: unknown } | null)?.code ?? "");
  if (code === "SQLITE_FULL") return new Refusal("unavailable", sentence("disk.full"));
  if (/^SQLITE_(?:IOERR|READONLY|CANTOPEN)/.test(code)) {
    console.error("The store could not be written:", error);
    return new Refusal("unavailable", sentence("disk.failed"));
  }
  return error;
}
