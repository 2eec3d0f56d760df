import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import type { Holding } from "../domain/backups/records.ts";
import { findDamage, findWrongMark, holdingOf } from "../store/connection/checks.ts";
import { connect, type StoreLocation } from "../store/connection/connect.ts";
import { packBackup, type ToPack } from "./file.ts";

/** What a copy of a store holds, once it is checked: one file without a log, which nothing changes any more. */
export interface CheckedFile {
  readonly bytes: number;
  readonly sha256: string;
  readonly holding: Holding;
}

/**
 * The work on a backup that takes long and needs nothing of the desk: a desk does it in a thread, so that no entry waits for
 * it.
 */
export interface BackupWork {
  /** Checks a copy as a start checks a store. @throws when it is not whole */
  check(copy: StoreLocation): Promise<CheckedFile>;
  /** Packs a checked copy into a new backup and reads that back. @throws BackupUnusable, or the system's error */
  pack(target: string, toPack: ToPack): Promise<void>;
}

/** Does it in the thread that asks for it. */
export const workHere: BackupWork = { check: checkCopy, pack: packBackup };

const marksLookedAt = 500;

async function checkCopy(copy: StoreLocation): Promise<CheckedFile> {
  const holding = holdingIn(copy);
  const hash = createHash("sha256");
  let bytes = 0;
  for await (const piece of createReadStream(copy.file, {
    highWaterMark: 2 ** 20,
  }) as AsyncIterable<Buffer>) {
    hash.update(piece);
    bytes += piece.length;
  }
  return { bytes, sha256: hash.digest("hex"), holding };
}

/** Makes the copy one file without a log, checks it, and reads what it holds. */
function holdingIn(copy: StoreLocation): Holding {
  const db = connect(copy);
  try {
    db.pragma("journal_mode = DELETE");
    const damage = findDamage(db) ?? findWrongMark(db, marksLookedAt);
    if (damage !== null) throw new Error(`the copy is not whole: ${damage}`);
    return holdingOf(db);
  } finally {
    db.close();
  }
}
