import { strToU8, zipSync } from "fflate";
import type { TextFile } from "./contents.ts";

/**
 * The files in the order given, as a zip whose bytes depend on nothing but them: one fixed time (the earliest that the
 * format knows, read as local time), and stored as they are, so that no version of a compressor has a say. A bundle is
 * small, and anybody can look through its bytes for what must not be there.
 */
export function zipOf(files: readonly TextFile[]): Uint8Array {
  const entries = Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)]));
  return zipSync(entries, { level: 0, mtime: new Date(1980, 0, 1) });
}
