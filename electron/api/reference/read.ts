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
import { readRows } from "../../domain/reference/rows.ts";
import { cellsOf, type Files, requireAsDescribed, sha256Of, textOf } from "./files.ts";
import { readZip } from "./zip.ts";

/**
 * Reads a bundle that another organiser's program wrote, and trusts none of it: every file is checked against its size
 * and hash, every fact is parsed, and fingerprints are recomputed. Writes nothing.
 * @throws Refusal `bad-input` with the first reason to refuse it.
 */
export function readBundle(zip: Uint8Array): Bundle {
  return readBundleFiles(readZip(zip, (name) => fileNames.has(name)));
}

/** Reads a bundle from its files, as `readBundle` does. @throws Refusal `bad-input` */
export function readBundleFiles(files: Files): Bundle {
  const { kind, demo, rehearsal, files: described } = readDescriptor(textOf(files, descriptorName));
  requireAsDescribed(files, described);
  const tests = readProtocols(textOf(files, protocolsName));
  const rowsName = rowsNames[kind];
  const marks = readRows(kind, cellsOf(rowsName, textOf(files, rowsName), bundleLimits.rows), tests);
  const contentSha256 = hashOfAll(described);
  return { kind, demo, rehearsal, contentSha256, tests, marks };
}

/** Hashes all files, not the rows alone: ids are drawn from the content, so two days can have equal rows by chance. */
function hashOfAll(described: readonly DescribedFile[]): string {
  const lines = described.map(({ name, sha256 }) => `${sha256} ${name}\n`).sort();
  return sha256Of(new TextEncoder().encode(lines.join("")));
}
