import { randomUUID } from "node:crypto";
import { closeSync, openSync, rmSync, writeSync } from "node:fs";
import { join } from "node:path";

/** Takes every byte that is left on a folder's disk; the answer gives them back. */
export function fillDisk(folder: string): () => void {
  const file = join(folder, `filler-${randomUUID()}`);
  const filler = openSync(file, "w");
  for (let size = 1 << 16; size >= 1; size = Math.floor(size / 2)) {
    try {
      for (;;) writeSync(filler, Buffer.alloc(size));
    } catch (error) {
      if ((error as { code?: string }).code !== "ENOSPC") throw error;
    }
  }
  closeSync(filler);
  return () => rmSync(file);
}
