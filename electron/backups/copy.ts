import { randomUUID } from "node:crypto";
import { readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { Holding } from "../domain/backups/records.ts";
import { findDamage, findWrongMark, holdingOf } from "../store/connection/checks.ts";
import { connect, type StoreLocation } from "../store/connection/connect.ts";
import type { ReadableDb } from "../store/connection/database.ts";

/** A copy of a store that passed its checks. */
export interface CheckedCopy {
  readonly store: Buffer;
  readonly holding: Holding;
}

/** Pages per step: some 400 KB, well under a frame's time. */
const pagesAStep = 100;
const marksLookedAt = 500;

/**
 * Copies a store while it stays in use, by SQLite's own online backup, then opens, checks and reads the copy. Until
 * then the copy lies in `folder`.
 * @throws when there is no room, or the copy is damaged.
 */
export async function copyStore(
  db: ReadableDb,
  folder: string,
  library: Omit<StoreLocation, "file">,
  told: (done: number, total: number) => void,
): Promise<CheckedCopy> {
  const file = join(folder, `.copy-${randomUUID()}`);
  try {
    // SQLite accepts an empty file as it is, with its permissions.
    await writeFile(file, "", { mode: 0o600 });
    await db.backup(file, {
      progress: ({ totalPages, remainingPages }) => {
        told(totalPages - remainingPages, totalPages);
        return pagesAStep;
      },
    });
    const holding = checkCopy({ ...library, file });
    return { store: await readFile(file), holding };
  } finally {
    for (const part of ["", "-journal", "-wal", "-shm"]) await rm(`${file}${part}`, { force: true });
  }
}

/** Makes the copy one file without a log, and checks it as a start checks a store. */
function checkCopy(location: StoreLocation): Holding {
  const db = connect(location);
  try {
    db.pragma("journal_mode = DELETE");
    const damage = findDamage(db) ?? findWrongMark(db, marksLookedAt);
    if (damage !== null) throw new Error(`the copy is not whole: ${damage}`);
    return holdingOf(db);
  } finally {
    db.close();
  }
}
