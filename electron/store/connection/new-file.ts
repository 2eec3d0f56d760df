import { closeSync, openSync, renameSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import { syncFile, syncFolder } from "../../files/through.ts";

/**
 * Makes a new store's file under another name and moves it into place once it is whole, so that no crash leaves an
 * empty or half-made file there. Only this computer's user can read it; SQLite gives its log the same permissions.
 */
export function makeFile(store: string, make: (file: string) => void): void {
  const begun = `${store}.begun`;
  removeBegun(begun);
  try {
    closeSync(openSync(begun, "w", 0o600));
    make(begun);
    syncFile(begun);
    renameSync(begun, store);
  } catch (error) {
    // Half a file would take the room that is missing.
    removeBegun(begun);
    throw error;
  }
  syncFolder(dirname(store));
}

function removeBegun(begun: string): void {
  for (const part of ["", "-wal", "-shm", "-journal"]) rmSync(`${begun}${part}`, { force: true });
}
