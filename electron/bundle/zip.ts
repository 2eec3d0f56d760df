import { strToU8, zipSync } from "fflate";
import type { TextFile } from "./contents.ts";

/**
 * Packs files in the given order into a zip whose bytes depend on nothing else: one fixed time (the format's earliest,
 * read as local time), and stored uncompressed, so that no compressor's version matters. A bundle is small, and anybody
 * can search its bytes for things that must not be there.
 */
export function zipOf(files: readonly TextFile[]): Uint8Array {
  const entries = Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)]));
  return zipSync(entries, { level: 0, mtime: new Date(1980, 0, 1) });
}
