import type { Database } from "../connection/database.ts";
import { bringLogIn, guardOf } from "../keeping/guard.ts";
import { noteWiped } from "./erase-log.ts";

/**
 * Writes the store's file anew from what is in it, so that neither a page of it nor the write-ahead log holds anything
 * that was erased; then notes that. Never inside a transaction.
 * @throws when the disk is full or something reads the store just now: nothing is lost then, and it can be tried again.
 */
export function writeAnew(db: Database): void {
  bringLogIn(db);
  // With a write-ahead log this too goes through the log: the file itself changes when that is brought in.
  db.exec("VACUUM");
  bringLogIn(db);
  noteWiped(db);
  guardOf(db)?.committed();
}
