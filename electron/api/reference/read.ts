import { createHash } from "node:crypto";
import Papa from "papaparse";
import type { Bundle } from "../../domain/reference/bundle.ts";
import {
  type DescribedFile,
  descriptorName,
  fileNames,
  protocolsName,
  readDescriptor,
  rowsNames,
} from "../../domain/reference/descriptor.ts";
import { bundleLimits } from "../../domain/reference/limits.ts";
import { readProtocols } from "../../domain/reference/protocols.ts";
import { refused, unreadable } from "../../domain/reference/refused.ts";
import { type CellRows, readRows } from "../../domain/reference/rows.ts";
import { sentence } from "../../domain/words.ts";
import { readZip } from "./zip.ts";

/**
 * Reads a bundle that another organiser's program wrote, and trusts none of it: every file is checked against its size
 * and hash, every fact is parsed, and fingerprints are recomputed. Writes nothing.
 * @throws Refusal `bad-input` with the first reason to refuse it.
 */
export function readBundle(zip: Uint8Array): Bundle {
  const files = readZip(zip, (name) => fileNames.has(name));
  const { kind, demo, rehearsal, files: described } = readDescriptor(textOf(files, descriptorName));
  requireAsDescribed(files, described);
  const tests = readProtocols(textOf(files, protocolsName));
  const rowsName = rowsNames[kind];
  const marks = readRows(kind, cellsOf(rowsName, textOf(files, rowsName)), tests);
  const contentSha256 = hashOfAll(described);
  return { kind, demo, rehearsal, contentSha256, tests, marks };
}

type Files = ReadonlyMap<string, Uint8Array>;

function bytesOf(files: Files, name: string): Uint8Array {
  const bytes = files.get(name);
  if (bytes === undefined) throw refused(sentence("reference.missing", { name }));
  return bytes;
}

function textOf(files: Files, name: string): string {
  const bytes = bytesOf(files, name);
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw unreadable(name);
  }
}

/** Checks that every described file is there unchanged, and no other. */
function requireAsDescribed(files: Files, described: readonly DescribedFile[]): void {
  for (const { name, bytes, sha256 } of described) {
    const file = bytesOf(files, name);
    if (file.length !== bytes || sha256Of(file) !== sha256) {
      throw refused(sentence("reference.changed", { name }));
    }
  }
  const names = new Set([descriptorName, ...described.map(({ name }) => name)]);
  const stray = [...files.keys()].find((name) => !names.has(name));
  if (stray !== undefined) throw refused(sentence("reference.stray", { name: stray }));
}

/** Returns the SHA-256 in hexadecimal digits. */
export function sha256Of(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/** Hashes all files, not the rows alone: ids are drawn from the content, so two days can have equal rows by chance. */
function hashOfAll(described: readonly DescribedFile[]): string {
  const lines = described.map(({ name, sha256 }) => `${sha256} ${name}\n`).sort();
  return sha256Of(new TextEncoder().encode(lines.join("")));
}

/** Splits text by the bundle's own dialect: commas, CRLF, the last line ended too. */
function cellsOf(name: string, text: string): CellRows {
  if (!text.endsWith("\r\n")) throw unreadable(name);
  const dialect = { delimiter: ",", newline: "\r\n" } as const;
  // One row more than the limit is enough to see that there are too many.
  const preview = bundleLimits.rows + 2;
  const { data, errors } = Papa.parse<string[]>(text.slice(0, -2), { ...dialect, preview });
  if (errors.length > 0) throw unreadable(name);
  return data;
}
