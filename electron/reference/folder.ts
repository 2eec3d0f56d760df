import { type BigIntStats, constants, statSync } from "node:fs";
import { type FileHandle, open, readdir } from "node:fs/promises";
import { join } from "node:path";
import { bundleLimits } from "../domain/reference/limits.ts";
import { refused, tooBig } from "../domain/reference/refused.ts";
import { Refusal } from "../domain/refusal.ts";
import { type Sentence, sentence } from "../domain/words.ts";

/** A file that somebody sent. */
export interface Sent {
  /** Its path below the folder, with slashes. */
  readonly name: string;
  /** The direct subfolder that it lies in, all of which is one hall; null: it is a hall of its own. */
  readonly subfolder: string | null;
}

/** Lists the files of a folder and below whose names end as wanted, by name, whatever they are. */
export async function filesIn(folder: string, endings: readonly string[]): Promise<Sent[]> {
  const isTaken = (name: string) => endings.some((ending) => name.toLowerCase().endsWith(ending));
  const found: Sent[] = [];
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    if (isTaken(entry.name)) found.push({ name: entry.name, subfolder: null });
    else if (entry.isDirectory()) {
      for (const file of await filesBelow(folder, entry.name, isTaken)) found.push(file);
    }
  }
  return found.sort((a, b) => (a.name < b.name ? -1 : 1));
}

async function filesBelow(
  folder: string,
  subfolder: string,
  isTaken: (name: string) => boolean,
): Promise<Sent[]> {
  const entries = await readdir(join(folder, subfolder), { recursive: true });
  return entries
    .filter(isTaken)
    .map((name) => ({ name: `${subfolder}/${name.replaceAll("\\", "/")}`, subfolder }));
}

/** What tells one state of a file from another without reading it. */
export interface Stamp {
  readonly bytes: number;
  /** When it was last changed, in ns since 1970, as text, since it is beyond a number's digits. */
  readonly changed: string;
}

/**
 * Returns the stamp of a file without opening it; null where it is none. Waited for: twenty thousand that nobody has
 * changed are asked in a moment, and each by a promise of its own takes ten times as long.
 */
export function stampOf(path: string): Stamp | null {
  const status = statSync(path, { bigint: true, throwIfNoEntry: false });
  return status?.isFile() === true ? stampBy(status) : null;
}

function stampBy({ size, mtimeNs }: BigIntStats): Stamp {
  return { bytes: Number(size), changed: String(mtimeNs) };
}

/** A file that was opened. */
export interface Opened {
  readonly stamp: Stamp;
  /** Reads it whole. @throws Refusal `bad-input` when it is too big */
  readonly read: () => Promise<Uint8Array>;
}

/** Opens a file while `use` looks at it; a pipe that somebody named .zip is not waited for. @throws Refusal or the system's error */
export async function withFile<Result>(
  path: string,
  use: (file: Opened) => Promise<Result>,
): Promise<Result> {
  const handle = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    return await use(await openedBy(handle));
  } finally {
    await handle.close();
  }
}

async function openedBy(handle: FileHandle): Promise<Opened> {
  const status = await handle.stat({ bigint: true });
  if (!status.isFile()) throw refused(sentence("references.notFile"));
  return {
    stamp: stampBy(status),
    read: async () => {
      if (status.size > bundleLimits.bytes) throw tooBig();
      return new Uint8Array(await handle.readFile());
    },
  };
}

/** Returns a refusal's own sentence, or the system's reason for an unreadable file; anything else is a fault. */
export function reasonOf(error: unknown): Sentence {
  if (error instanceof Refusal) return error.sentence;
  if (error instanceof Error && "code" in error && "syscall" in error) {
    return sentence("references.notRead", { code: String(error.code) });
  }
  throw error;
}
