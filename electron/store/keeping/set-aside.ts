import { existsSync, readdirSync, renameSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { syncFolder } from "../../files/through.ts";
import { besides } from "./seal.ts";

/** The file in which a restored store waits, whole and checked, until the current one is out of its way. */
export const waitingFile = (store: string) => `${store}.restored`;
/** The file in which it lies until it is checked. */
export const uncheckedFile = (store: string) => `${store}.unchecked`;

/**
 * Moves a store's file and all that belongs to it to unused names; never overwrites or deletes. Returns the file's new
 * name, or null where there was nothing. The file goes first, the log last: after a crash in between, the next start
 * never finds a store with another store's log.
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

/** Puts the waiting store in place; what is left of the one before it is set aside. */
export function putInPlace(store: string, at: Date): string | null {
  const aside = setAside(store, at);
  renameSync(waitingFile(store), store);
  syncFolder(dirname(store));
  return aside;
}

/** Finishes, or drops, a restore that a crash interrupted. */
export function finishRestore(store: string): void {
  for (const part of ["", "-wal", "-shm", "-journal"])
    rmSync(`${uncheckedFile(store)}${part}`, { force: true });
  if (!existsSync(waitingFile(store))) return;
  if (existsSync(store)) rmSync(waitingFile(store));
  else putInPlace(store, new Date(0));
}

/** Lists a folder's files of stores set aside, or half restored when the program ended: they hold personal data. */
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
