import { renameSync, rmSync, statSync } from "node:fs";
import type { Holding } from "../domain/backups/records.ts";
import { writeThrough } from "../files/through.ts";
import { findDamage, findWrongMark, holdingOf } from "../store/connection/checks.ts";
import { type StoreLocation, withReading } from "../store/connection/connect.ts";
import { requireOurs } from "../store/connection/examine.ts";
import { markFile } from "../store/connection/file-header.ts";
import { putInPlace, uncheckedFile, waitingFile } from "../store/keeping/set-aside.ts";

/**
 * Puts a backup's store file in the store's place, and sets aside the file there. The new file is first checked as a
 * whole beside that place. The store must be closed.
 * @returns the new name of the earlier file; null if there was none.
 * @throws StoreRefused, or when there is no room: nothing was moved then.
 */
export function restoreStore(location: StoreLocation, store: Buffer, at: Date): string | null {
  const unchecked = uncheckedFile(location.file);
  try {
    // A file in a store's place changes only at checkpoints, from the first moment on.
    writeThrough(unchecked, markFile(store, "with-log"));
    withReading({ ...location, file: unchecked }, (db) => {
      requireOurs(db);
      const damage = findDamage(db) ?? findWrongMark(db, 1e9);
      if (damage !== null) throw new Error(damage);
    });
  } catch (error) {
    rmSync(unchecked, { force: true });
    throw error;
  }
  renameSync(unchecked, waitingFile(location.file));
  return putInPlace(location.file, at);
}

/** Returns the counts that an unopened store still shows, as a hint; null if it shows none. */
export function glanceAt(location: StoreLocation): Holding | null {
  if ((statSync(location.file, { throwIfNoEntry: false })?.size ?? 0) === 0) return null;
  try {
    return withReading(location, holdingOf);
  } catch {
    return null;
  }
}
