import { randomUUID } from "node:crypto";
import { open, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";

/**
 * Writes a whole file or nothing: to a new file beside it, through to the disk, then renamed into place. A file that
 * was there keeps its content until the new one is safe. Rejects with the system's error; nothing stays behind then.
 */
export async function writeWhole(file: string, bytes: Uint8Array): Promise<void> {
  const unfinished = join(dirname(file), `.${randomUUID()}.part`);
  try {
    await writeThrough(unfinished, bytes);
    await rename(unfinished, file);
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
  await syncFolder(dirname(file));
}

async function writeThrough(file: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(file, "wx");
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Makes the renaming itself last through a power cut. Windows has no such call and needs none. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === "win32") return;
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Why a file could not be written, as the page tells it. */
export function whyNotSaved(error: unknown): "no-space" | "not-allowed" | "failed" {
  const code = (error as NodeJS.ErrnoException | null)?.code ?? "";
  if (["ENOSPC", "EDQUOT", "EFBIG"].includes(code)) return "no-space";
  if (["EACCES", "EPERM", "EROFS"].includes(code)) return "not-allowed";
  return "failed";
}
