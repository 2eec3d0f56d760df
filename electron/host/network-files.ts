import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { writeWholeText } from "../files/through.ts";
import type { NetworkKeep } from "../network/kept.ts";

/**
 * Keeps the network's key and its switch in the data folder, beside the stores and not in one: a backup that nobody locked
 * must not carry the key to a stick (a locked one does, `backups/file.ts`). This computer's user alone can read them.
 */
export function networkFiles(folder: string): NetworkKeep {
  const key = join(folder, "network-key.pem");
  const kept = join(folder, "network.json");
  return {
    key: { read: () => readIfThere(key), write: (pem) => writeWholeText(key, pem) },
    read: () => readIfThere(kept),
    write: (text) => writeWholeText(kept, text),
  };
}

function readIfThere(file: string): string | null {
  return existsSync(file) ? readFileSync(file, "utf8") : null;
}
