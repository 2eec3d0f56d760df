import { createHash } from "node:crypto";
import Papa from "papaparse";
import { type DescribedFile, descriptorName } from "../../domain/reference/descriptor.ts";
import { refused, unreadable } from "../../domain/reference/refused.ts";
import type { CellRows } from "../../domain/reference/rows.ts";
import { sentence } from "../../domain/words.ts";

/** The files of somebody else's zip, by name. */
export type Files = ReadonlyMap<string, Uint8Array>;

/** @throws Refusal `bad-input` when it is missing. */
export function bytesOf(files: Files, name: string): Uint8Array {
  const bytes = files.get(name);
  if (bytes === undefined) throw refused(sentence("reference.missing", { name }));
  return bytes;
}

/** @throws Refusal `bad-input` when it is missing or no UTF-8. */
export function textOf(files: Files, name: string): string {
  const bytes = bytesOf(files, name);
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw unreadable(name);
  }
}

/**
 * Checks that every described file is there unchanged, and besides them only the descriptor and `undescribed`.
 * @throws Refusal `bad-input`
 */
export function requireAsDescribed(
  files: Files,
  described: readonly DescribedFile[],
  undescribed: readonly string[] = [],
): void {
  for (const { name, bytes, sha256 } of described) {
    const file = bytesOf(files, name);
    if (file.length !== bytes || sha256Of(file) !== sha256) {
      throw refused(sentence("reference.changed", { name }));
    }
  }
  const names = new Set([descriptorName, ...undescribed, ...described.map(({ name }) => name)]);
  const stray = [...files.keys()].find((name) => !names.has(name));
  if (stray !== undefined) throw refused(sentence("reference.stray", { name: stray }));
}

/** Returns the SHA-256 in hexadecimal digits. */
export function sha256Of(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/**
 * Splits text by the program's own dialect: commas, CRLF, the last line ended too. One row more than `mostRows` is read,
 * which is enough to see that there are too many.
 * @throws Refusal `bad-input`
 */
export function cellsOf(name: string, text: string, mostRows: number): CellRows {
  if (!text.endsWith("\r\n")) throw unreadable(name);
  const dialect = { delimiter: ",", newline: "\r\n" } as const;
  const { data, errors } = Papa.parse<string[]>(text.slice(0, -2), { ...dialect, preview: mostRows + 2 });
  if (errors.length > 0) throw unreadable(name);
  return data;
}
