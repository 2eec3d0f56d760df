import { Refusal } from "../../domain/refusal.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import { writeAnew } from "../erasure/erase-wipe.ts";
import { guardOf } from "../keeping/guard.ts";
import type { Database, ReadableDb, WritableDb } from "./database.ts";
import { watchMarks } from "./stamp.ts";

/** The topics of a change; windows read again whatever they show of a topic. */
export const topics = [
  "day",
  "people",
  "entrants",
  "attempts",
  "calls",
  "heats",
  "references",
  "studies",
  "plan",
] as const;
export type Topic = (typeof topics)[number];

/**
 * One commit: its number since this store was opened, and its topics. `tests`: those whose stations may look different;
 * left out: all of them.
 */
export interface Commit {
  readonly seq: number;
  readonly topics: readonly Topic[];
  readonly tests?: readonly TestCode[];
}

/** An open store. This room's functions read through `db`, their first parameter; only `write` writes. */
export interface Store {
  readonly db: ReadableDb;
  /**
   * Runs `work` in one transaction and, after the commit, announces `about`. A promise is refused by type: the
   * transaction would end before the work did.
   * @param testsOf tells by the work's result which tests' stations may look different; left out, all of them
   */
  write<Result>(
    about: readonly Topic[],
    work: (db: WritableDb) => Synchronous<Result>,
    testsOf?: (result: Result) => readonly TestCode[] | undefined,
  ): Result;
  /** The number of the newest change. */
  seq(): number;
  /** Calls `listener` after each commit until the returned function is called. */
  listen(listener: (change: Commit) => void): () => void;
  /** Puts checkpoints off while another thread reads the file; returns what ends that. */
  rest(): () => void;
  /** Rewrites the file, so that no erased data is left in it (`writeAnew`). Never inside `write`. */
  wipe(): void;
  close(): void;
}

type Synchronous<Result> = Result extends PromiseLike<unknown> ? never : Result;

export function createStore(db: Database): Store {
  watchMarks(db);
  const transaction = transactionsOn(db);
  const listeners = new Set<(change: Commit) => void>();
  let seq = 0;

  function write<Result>(
    about: readonly Topic[],
    work: (db: WritableDb) => Synchronous<Result>,
    testsOf?: (result: Result) => readonly TestCode[] | undefined,
  ): Result {
    const result = transaction(() => work(db));
    // On the disk by now: `synchronous` is FULL.
    guardOf(db)?.committed();
    seq += 1;
    const tests = testsOf?.(result);
    const change = { seq, topics: about, ...(tests !== undefined && { tests }) };
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
    rest: () => guardOf(db)?.rest() ?? (() => {}),
    wipe: () => writeAnew(db),
    close() {
      const guard = guardOf(db);
      // A full disk leaves the log for the next start.
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
 * Turns an error of the disk into a sentence. Whether the failed commit reached the disk is unknown; sending the same
 * ids again makes it certain and never doubles anything.
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
