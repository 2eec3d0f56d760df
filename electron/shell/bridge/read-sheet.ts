import { constants } from "node:fs";
import { type FileHandle, open } from "node:fs/promises";
import { basename } from "node:path";
import { largestSheet, type OpenedSheet, type RefusedSheet } from "./bridge-types.ts";

/** Reads a sheet that the person picked. Checks its size first: one that is too big is not read at all. */
export async function readSheet(file: string): Promise<OpenedSheet | RefusedSheet> {
  const name = basename(file);
  try {
    // Non-blocking: a pipe that somebody named .csv would never answer.
    const handle = await open(file, constants.O_RDONLY | constants.O_NONBLOCK);
    try {
      return await readOpened(handle, name);
    } finally {
      await handle.close();
    }
  } catch (error) {
    console.error(`The sheet ${name} can't be read:`, error);
    return { name, refused: "unreadable" };
  }
}

async function readOpened(handle: FileHandle, name: string): Promise<OpenedSheet | RefusedSheet> {
  const status = await handle.stat();
  if (!status.isFile()) return { name, refused: "unreadable" };
  if (status.size > largestSheet) return { name, refused: "too-big" };
  const bytes = new Uint8Array(await handle.readFile());
  // It may have grown since the check.
  return bytes.length > largestSheet ? { name, refused: "too-big" } : { name, bytes };
}
