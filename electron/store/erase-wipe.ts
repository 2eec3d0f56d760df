import type { Database } from "./database.ts";
import { noteWiped } from "./erase-log.ts";
import { whileFileChanges } from "./guard.ts";

/**
 * Writes the store's file anew from what is in it, so that neither a page of it nor the write-ahead log holds anything
 * that was erased; then notes that. Never inside a transaction.
 * @throws when the disk is full or something reads the store just now: nothing is lost then, and it can be tried again.
 */
export function writeAnew(db: Database): void {
  whileFileChanges(db, () => {
    emptyLog(db);
    db.exec("VACUUM");
    emptyLog(db);
  });
  noteWiped(db);
}

/** Brings the write-ahead log into the file and cuts it to nothing. */
function emptyLog(db: Database): void {
  const [answer] = db.pragma("wal_checkpoint(TRUNCATE)") as { busy: number }[];
  if (answer?.busy !== 0) throw new Error("the store is being read just now");
}
