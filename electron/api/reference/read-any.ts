import { descriptorName, fileNames } from "../../domain/reference/descriptor.ts";
import { bundleLimits } from "../../domain/reference/limits.ts";
import { tooBig } from "../../domain/reference/refused.ts";
import { describesTable, tableFileNames } from "../../domain/reference-table/descriptor.ts";
import type { FromElsewhere, ToRead } from "../../domain/reference-table/from-elsewhere.ts";
import { packTable } from "../../domain/reference-table/packed.ts";
import { tableLimits } from "../../domain/reference-table/table.ts";
import { Refusal } from "../../domain/refusal.ts";
import type { Sentence } from "../../domain/words.ts";
import { bytesOf, sha256Of, textOf } from "./files.ts";
import { readBundleFiles } from "./read.ts";
import { readTableFiles } from "./read-table.ts";
import { readZip, requireSizes } from "./zip.ts";

/**
 * Reads a bundle or a reference table, whichever it is, and believes nothing of it (`readBundle`, `readTable`). Takes
 * long enough for a large table to keep entries waiting.
 * @throws Refusal `bad-input` with the first reason to refuse it.
 */
function readFromElsewhere({ zip, today }: ToRead): FromElsewhere {
  const files = readZip(zip, (name) => fileNames.has(name) || tableFileNames.has(name), tableLimits);
  if (describesTable(textOf(files, descriptorName))) {
    const table = packTable(readTableFiles(files, today));
    return { kind: "table", table, sha256: sha256Of(bytesOf(files, descriptorName)) };
  }
  if (zip.length > bundleLimits.bytes) throw tooBig();
  requireSizes(
    [...files.values()].map(({ length }) => length),
    bundleLimits,
  );
  return { kind: "bundle", bundle: readBundleFiles(files), sha256: sha256Of(zip) };
}

/** The same with a refusal as an answer, which another thread can give. */
export function readOrRefuse(task: ToRead): FromElsewhere | { readonly refused: Sentence } {
  try {
    return readFromElsewhere(task);
  } catch (error) {
    if (error instanceof Refusal) return { refused: error.sentence };
    throw error;
  }
}
