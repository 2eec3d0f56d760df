import { constants } from "node:fs";
import { open, readdir } from "node:fs/promises";
import { join } from "node:path";
import { readBundle } from "../api/reference/read.ts";
import type { Bundle } from "../domain/reference/bundle.ts";
import { bundleLimits } from "../domain/reference/limits.ts";
import { refused, tooBig } from "../domain/reference/refused.ts";
import { Refusal } from "../domain/refusal.ts";
import { type Sentence, sentence } from "../domain/words.ts";

/** One file of the folder: its bundle, or the reason to refuse it. */
export type Read =
  | { readonly name: string; readonly bundle: Bundle }
  | { readonly name: string; readonly keptBack: Sentence };

/**
 * Reads the zip files of a folder one by one, by name, so that only one is in memory; no content of one can stop the
 * others. A bundle that came already, in any zip, counts once.
 */
export async function* readFolder(folder: string): AsyncGenerator<Read> {
  const names = (await readdir(folder)).filter((name) => /\.zip$/i.test(name)).sort();
  const seen = new Map<string, string>();
  for (const name of names) {
    try {
      const bundle = readBundle(await bytesOf(join(folder, name)));
      requireFit(bundle, seen);
      seen.set(bundle.contentSha256, name);
      yield { name, bundle };
    } catch (error) {
      yield { name, keptBack: reasonOf(error) };
    }
  }
}

function requireFit({ demo, rehearsal, contentSha256 }: Bundle, seen: ReadonlyMap<string, string>): void {
  if (rehearsal) throw refused(sentence("reference.rehearsal"));
  if (demo) throw refused(sentence("reference.demo"));
  const first = seen.get(contentSha256);
  if (first !== undefined) throw refused(sentence("references.again", { name: first }));
}

/** Reads a file. One that is too big is not read at all, and a pipe that somebody named .zip is not waited for. */
async function bytesOf(path: string): Promise<Uint8Array> {
  const handle = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const status = await handle.stat();
    if (!status.isFile()) throw refused(sentence("references.notFile"));
    if (status.size > bundleLimits.bytes) throw tooBig();
    return new Uint8Array(await handle.readFile());
  } finally {
    await handle.close();
  }
}

/** Returns a refusal's own sentence, or the system's reason for an unreadable file; anything else is a fault. */
function reasonOf(error: unknown): Sentence {
  if (error instanceof Refusal) return error.sentence;
  if (error instanceof Error && "code" in error && "syscall" in error) {
    return sentence("references.notRead", { code: String(error.code) });
  }
  throw error;
}
