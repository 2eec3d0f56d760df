import { constants } from "node:fs";
import { open, readdir } from "node:fs/promises";
import { join } from "node:path";
import { readBundle } from "../api/reference/read.ts";
import type { Bundle } from "../domain/reference/bundle.ts";
import { bundleLimits } from "../domain/reference/limits.ts";
import { refused, tooBig } from "../domain/reference/refused.ts";
import { Refusal } from "../domain/refusal.ts";
import { type Sentence, sentence } from "../domain/words.ts";

/** One file of the folder: its bundle, or why it is kept back. */
export type Read =
  | { readonly name: string; readonly bundle: Bundle }
  | { readonly name: string; readonly keptBack: Sentence };

/**
 * Reads the zip files of a folder one after the other, by name, so that only one is in memory; whatever is in one of them
 * can stop nothing. A bundle that came already, in whatever zip, counts once.
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

/** Of a file that is too big nothing is read, and a pipe that somebody named .zip is not waited for. */
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

/** A refusal's own sentence, or what the system says of a file that it does not give out; anything else is a fault. */
function reasonOf(error: unknown): Sentence {
  if (error instanceof Refusal) return error.sentence;
  if (error instanceof Error && "code" in error && "syscall" in error) {
    return sentence("references.notRead", { code: String(error.code) });
  }
  throw error;
}
