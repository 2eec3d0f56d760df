import { randomUUID } from "node:crypto";
import { open, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { syncFolder } from "./through.ts";

/** A file to be written: its path, and all that is in it. */
export interface WholeFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes whole files or nothing: each to a new file beside it, through to the disk, and all of them renamed into place at the
 * end. Files that were there keep their content until the new ones are safe; nothing unfinished stays behind. The folders must
 * be there. Files that go out into the world have the rights that the system gives new files, unless `mode` says others.
 * @throws the system's error
 */
export async function writeWholeFiles(files: readonly WholeFile[], mode?: number): Promise<void> {
  const parts = files.map((file) => ({ ...file, part: unfinishedBeside(file.path) }));
  try {
    for (const { part, content } of parts) await writeNew(part, content, mode);
    for (const { part, path } of parts) await rename(part, path);
  } finally {
    for (const { part } of parts) await rm(part, { force: true });
  }
  for (const folder of new Set(files.map(({ path }) => dirname(path)))) syncFolder(folder);
}

/** A name beside a file for what is not whole yet; nothing else has it. */
export function unfinishedBeside(path: string): string {
  return join(dirname(path), `.${randomUUID()}.part`);
}

/** Writes a file that is not there yet, and waits for the disk. @throws the system's error */
export async function writeNew(path: string, content: string | Uint8Array, mode?: number): Promise<void> {
  const handle = await open(path, "wx", mode);
  try {
    await handle.writeFile(content);
    await handle.sync();
  } finally {
    await handle.close();
  }
}
