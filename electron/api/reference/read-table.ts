import { refused } from "../../domain/reference/refused.ts";
import { readTableDescriptor, tableFileNames, tableFiles } from "../../domain/reference-table/descriptor.ts";
import { readBundleHashes, readGroups } from "../../domain/reference-table/rows.ts";
import { percentilesTold, type ReferenceTable, tableLimits } from "../../domain/reference-table/table.ts";
import { sentence } from "../../domain/words.ts";
import { bytesOf, cellsOf, type Files, requireAsDescribed, textOf } from "./files.ts";
import { requireSigned } from "./signature.ts";
import { readZip } from "./zip.ts";

/**
 * Reads a reference table and trusts nothing that isn't signed: the signature over the descriptor, the descriptor's
 * hashes of all files, then every row. Whether its publisher is a known one is for the caller. Writes nothing.
 * @param today the last day on which it may be valid (ISO 8601)
 * @throws Refusal `bad-input` with the first reason to refuse it.
 */
export function readTable(zip: Uint8Array, today: string): ReferenceTable {
  return readTableFiles(
    readZip(zip, (name) => tableFileNames.has(name), tableLimits),
    today,
  );
}

/** Reads a table from its files, as `readTable` does. @throws Refusal `bad-input` */
export function readTableFiles(files: Files, today: string): ReferenceTable {
  const descriptor = bytesOf(files, tableFiles.descriptor);
  const { files: described, ...facts } = readTableDescriptor(textOf(files, tableFiles.descriptor));
  if (!files.has(tableFiles.signature)) throw refused(sentence("referenceTable.unsigned"));
  requireSigned(descriptor, facts.publicKey, textOf(files, tableFiles.signature));
  requireAsDescribed(files, described, [tableFiles.signature]);
  if (facts.validUntil < today) {
    throw refused(sentence("referenceTable.expired", { date: facts.validUntil }));
  }
  const cells = (name: string, most: number) => cellsOf(name, textOf(files, name), most);
  const percentiles = tableLimits.groups * percentilesTold.length;
  return {
    ...facts,
    bundles: readBundleHashes(cells(tableFiles.bundles, tableLimits.bundles)),
    groups: readGroups(
      cells(tableFiles.groups, tableLimits.groups),
      cells(tableFiles.percentiles, percentiles),
    ),
  };
}
