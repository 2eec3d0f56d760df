import { createHash } from "node:crypto";
import { chmodSync, existsSync, mkdirSync } from "node:fs";
import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

/** Makes a folder that only this computer's user can read; an existing one is restricted to that. */
export function makePrivateFolder(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  restrict(folder, 0o700);
}

/** Restricts files to this computer's user; missing files are skipped. */
export function makePrivate(files: readonly string[]): void {
  for (const file of files) if (existsSync(file)) restrict(file, 0o600);
}

/** Sets a file's permissions. A file system without any, or a file with another owner, must not stop the day. */
function restrict(path: string, mode: number): void {
  try {
    chmodSync(path, mode);
  } catch (error) {
    console.error(`The rights to ${path} could not be set:`, error);
  }
}

/** Lends a temporary folder, readable by this computer's user only, for as long as the work takes. */
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

/** Deletes the temporary folders that a crash left behind: they may hold personal data. */
export async function sweepAside(store: string): Promise<void> {
  const names = (await readdir(tmpdir())).filter((name) => name.startsWith(asideName(store)));
  for (const name of names) await rm(join(tmpdir(), name), { recursive: true, force: true });
}

/** Names this store's temporary folders; another account's or data folder's program may be at work now. */
function asideName(store: string): string {
  return `tapeline-copy-${createHash("sha256").update(dirname(store)).digest("hex").slice(0, 12)}-`;
}
