import type { Database } from "../connection/database.ts";
import { bringLogIn, guardOf } from "../keeping/guard.ts";
import { noteWiped } from "./erase-log.ts";

/**
 * Rewrites the store's file from its content, so that neither its pages nor the write-ahead log hold erased data, and
 * notes that. Never inside a transaction.
 * @throws when the disk is full or something is reading the store; nothing is lost then, and a later try can succeed.
 */
export function writeAnew(db: Database): void {
  bringLogIn(db);
  // With a write-ahead log VACUUM too writes to the log; the file itself changes at the checkpoint.
  db.exec("VACUUM");
  bringLogIn(db);
  noteWiped(db);
  guardOf(db)?.committed();
}
