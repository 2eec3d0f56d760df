import { randomUUID } from "node:crypto";
import { open, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { syncFolder } from "./through.ts";

/** A file to write: its path and its content. */
export interface WholeFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes all files or none: each to a new file beside it, synced, and all of them renamed into place at the end.
 * Existing files keep their content until the new ones are safe; no unfinished file is left. The folders must exist.
 * The files get the system's default permissions, unless `mode` gives others.
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

/** Returns a unique name beside a file, for its unfinished content. */
export function unfinishedBeside(path: string): string {
  return join(dirname(path), `.${randomUUID()}.part`);
}

/** Writes a new file and syncs it. @throws the system's error */
export async function writeNew(path: string, content: string | Uint8Array, mode?: number): Promise<void> {
  const handle = await open(path, "wx", mode);
  try {
    await handle.writeFile(content);
    await handle.sync();
  } finally {
    await handle.close();
  }
}
