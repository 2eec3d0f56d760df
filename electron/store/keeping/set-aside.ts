import { existsSync, readdirSync, renameSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { syncFolder } from "../../files/through.ts";
import { besides } from "./seal.ts";

/** Where a restored store waits, whole and checked, until the one before it is out of its way. */
export const waitingFile = (store: string) => `${store}.restored`;
/** Where it lies until it is checked. */
export const uncheckedFile = (store: string) => `${store}.unchecked`;

/**
 * Moves a store's file and all that belongs to it to names that nothing else uses; never overwrites or deletes. Returns
 * the file's new name, or null where there was nothing. The file goes first, the log beside it last: where the program
 * ends in between, the next start finds no store with a log that is not its own.
 */
export function setAside(store: string, at: Date): string | null {
  const to = freeName(store, at);
  let moved = false;
  for (const part of ["", ...besides]) {
    if (!existsSync(`${store}${part}`)) continue;
    renameSync(`${store}${part}`, `${to}${part}`);
    moved = true;
  }
  syncFolder(dirname(store));
  return moved ? to : null;
}

/** Puts the store that waits in place; the one before it, whatever is left of it, is set aside. */
export function putInPlace(store: string, at: Date): string | null {
  const aside = setAside(store, at);
  renameSync(waitingFile(store), store);
  syncFolder(dirname(store));
  return aside;
}

/** Finishes, or forgets, a restore in whose middle the program ended. */
export function finishRestore(store: string): void {
  for (const part of ["", "-wal", "-shm", "-journal"])
    rmSync(`${uncheckedFile(store)}${part}`, { force: true });
  if (!existsSync(waitingFile(store))) return;
  if (existsSync(store)) rmSync(waitingFile(store));
  else putInPlace(store, new Date(0));
}

/** Every file of stores that were set aside in a folder, or on their way back when the program ended: they hold people. */
export function filesSetAside(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.includes(sign) || /\.sqlite\.(?:unchecked|restored)/.test(name))
    .map((name) => join(folder, name));
}

const sign = ".set-aside-";

function freeName(store: string, at: Date): string {
  const stamp = at.toISOString().slice(0, 19).replaceAll(":", "");
  const bare = basename(store).replace(/\.sqlite$/, "");
  for (let count = 1; ; count += 1) {
    const name = join(dirname(store), `${bare}${sign}${stamp}-${count}.sqlite`);
    if (!["", ...besides].some((part) => existsSync(`${name}${part}`))) return name;
  }
}
