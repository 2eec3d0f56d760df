import { createHash } from "node:crypto";
import { chmodSync, existsSync, mkdirSync } from "node:fs";
import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

/** Makes a folder into which only this computer's user can look; one that is there already becomes so. */
export function makePrivateFolder(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  restrict(folder, 0o700);
}

/** Takes the rights to files away from everybody but this computer's user; what is not there is passed over. */
export function makePrivate(files: readonly string[]): void {
  for (const file of files) if (existsSync(file)) restrict(file, 0o600);
}

/** Some file systems know no rights, and a file may be somebody else's: neither may stop the day. */
function restrict(path: string, mode: number): void {
  try {
    chmodSync(path, mode);
  } catch (error) {
    console.error(`The rights to ${path} could not be set:`, error);
  }
}

/** Lends a folder of the system's, into which only this computer's user can look, for as long as the work takes. */
export async function inFolderAside<Result>(
  store: string,
  work: (folder: string) => Promise<Result>,
): Promise<Result> {
  const folder = await mkdtemp(join(tmpdir(), asideName(store)));
  try {
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Deletes what such work left when the program ended in it: it may hold people. */
export async function sweepAside(store: string): Promise<void> {
  const names = (await readdir(tmpdir())).filter((name) => name.startsWith(asideName(store)));
  for (const name of names) await rm(join(tmpdir(), name), { recursive: true, force: true });
}

/** Of this store alone: another account's program, or another data folder's, may be at work just now. */
function asideName(store: string): string {
  return `tapeline-copy-${createHash("sha256").update(dirname(store)).digest("hex").slice(0, 12)}-`;
}
