import { closeSync, openSync, renameSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import { syncFile, syncFolder } from "../../files/through.ts";

/**
 * Makes a new store's file under another name and puts it in place once it is whole: whatever ends the program, an empty
 * or half made file is never in a store's place. Only this computer's user can read it, and SQLite gives its log the same
 * rights.
 */
export function makeFile(store: string, make: (file: string) => void): void {
  const begun = `${store}.begun`;
  for (const part of ["", "-wal", "-shm", "-journal"]) rmSync(`${begun}${part}`, { force: true });
  closeSync(openSync(begun, "w", 0o600));
  make(begun);
  syncFile(begun);
  renameSync(begun, store);
  syncFolder(dirname(store));
}
