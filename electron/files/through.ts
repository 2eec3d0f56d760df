import { closeSync, fsyncSync, openSync, renameSync, writeSync } from "node:fs";
import { dirname } from "node:path";

/**
 * Writes a file and syncs it to the disk; only this computer's user can read it. `flags` "w": the whole file, "a": at
 * its end.
 * @throws the system's error
 */
export function writeThrough(file: string, bytes: Buffer, flags: "w" | "a" = "w"): void {
  const opened = openSync(file, flags, 0o600);
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(opened, bytes, at);
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

/** Writes a small file whole or not at all, by a rename that survives a power cut. */
export function writeWholeText(file: string, text: string): void {
  const unfinished = `${file}.part`;
  writeThrough(unfinished, Buffer.from(text));
  renameSync(unfinished, file);
  syncFolder(dirname(file));
}

/** Syncs a file's writes and truncations, whoever made them, to the disk. */
export function syncFile(file: string): void {
  const opened = openSync(file, "r+");
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

/** Syncs a folder, so that a renaming survives a power cut. Windows has no such call and needs none. */
export function syncFolder(folder: string): void {
  if (process.platform === "win32") return;
  const opened = openSync(folder, "r");
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}
