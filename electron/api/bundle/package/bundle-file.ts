import { codebookFile } from "./codebook.ts";
import type { Contents, TextFile } from "./contents.ts";
import { descriptorFile, sha256 } from "./datapackage.ts";
import { privacyFile } from "./privacy.ts";
import { protocolsFile } from "./protocols.ts";
import { marksSheet, summarySheet } from "./sheets.ts";
import { zipOf } from "./zip.ts";

/** A bundle ready to be written: the same contents always make the same bytes. */
export interface BundleFile {
  /** Says the quarter and nothing nearer. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Of all bytes, in hexadecimal digits. */
  readonly sha256: string;
  /** What is in it, in order. */
  readonly files: readonly TextFile[];
}

export function bundleFile(contents: Contents): BundleFile {
  const described = {
    marks: marksSheet(contents.rows),
    summary: summarySheet(contents.summaries),
    protocols: protocolsFile(contents.protocols),
    privacy: privacyFile(contents),
    codebook: codebookFile(contents),
  };
  const { marks, summary, protocols, privacy, codebook } = described;
  const files = [descriptorFile(contents, described), marks, summary, protocols, codebook, privacy];
  const bytes = zipOf(files);
  const name = `tapeline-bundle-${contents.demo ? "demo-" : ""}${contents.quarter}.zip`;
  return { name, bytes, sha256: sha256(bytes), files };
}
