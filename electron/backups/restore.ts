import { renameSync, rmSync, statSync } from "node:fs";
import type { Holding } from "../domain/backups/records.ts";
import { writeThrough } from "../files/through.ts";
import { findDamage, findWrongMark, holdingOf } from "../store/connection/checks.ts";
import { type StoreLocation, withReading } from "../store/connection/connect.ts";
import { markFile } from "../store/connection/file-header.ts";
import { requireOurs } from "../store/connection/open.ts";
import { putInPlace, uncheckedFile, waitingFile } from "../store/keeping/set-aside.ts";

/**
 * Puts a store's file out of a backup in the store's place; what is there is set aside. It is checked first, all of it,
 * where it lies beside the place. The store must be closed.
 * @returns the name under which the one before lies now; null where there was none.
 * @throws StoreRefused, or when there is no room: nothing was moved then.
 */
export function restoreStore(location: StoreLocation, store: Buffer, at: Date): string | null {
  const unchecked = uncheckedFile(location.file);
  try {
    // A file in a store's place changes at checkpoints alone, from the first moment on.
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

/** What a store that is not opened still shows of how much it held: a hint, and null where it shows nothing. */
export function glanceAt(location: StoreLocation): Holding | null {
  if ((statSync(location.file, { throwIfNoEntry: false })?.size ?? 0) === 0) return null;
  try {
    return withReading(location, holdingOf);
  } catch {
    return null;
  }
}
