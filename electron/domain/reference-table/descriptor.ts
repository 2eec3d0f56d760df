import { z } from "zod";
import { type DescribedFile, descriptorName, resourcesOf } from "../reference/descriptor.ts";
import { parseJson } from "../reference/json.ts";
import { refused, shown, unreadable } from "../reference/refused.ts";
import { rulesVersion } from "../tests/registry.ts";
import { sentence } from "../words.ts";
import { type ReferenceTable, tableLimits } from "./table.ts";

/** Version of a table's files and columns; goes up when readers have to know of a change. */
export const tableVersion = 1;

export const tableFiles = Object.freeze({
  descriptor: descriptorName,
  groups: "groups.csv",
  percentiles: "percentiles.csv",
  bundles: "bundles.csv",
  codebook: "codebook.md",
  signature: "signature.json",
});
/** Every name of a file in a table. */
export const tableFileNames: ReadonlySet<string> = new Set(Object.values(tableFiles));
/** Those that the descriptor describes. */
const described: readonly string[] = [
  ...[tableFiles.groups, tableFiles.percentiles, tableFiles.bundles, tableFiles.codebook],
];

/** The descriptor's facts; `files`: all but itself and the signature over it. */
export interface TableDescriptor
  extends Pick<ReferenceTable, "publisher" | "publicKey" | "made" | "validUntil"> {
  readonly files: readonly DescribedFile[];
}

const beginning = z.object({ profile: z.unknown().optional(), tableVersion: z.unknown().optional() });

const schema = z.object({
  scoringRules: z.int(),
  publisher: z.object({
    name: z.string().trim().min(1).max(tableLimits.publisherLength),
    publicKey: z.string().regex(/^[\w-]{43}$/),
  }),
  made: z.iso.date(),
  validUntil: z.iso.date(),
  resources: resourcesOf({ files: 20, path: 100 }),
});

/**
 * Reads a table's datapackage.json, of which the signature is checked apart.
 * @throws Refusal `bad-input` when it is none, of another version, by other rules of scoring, or describes other files.
 */
export function readTableDescriptor(text: string): TableDescriptor {
  const value = parseJson(descriptorName, text);
  requireTable(value);
  const { data } = schema.safeParse(value);
  if (data === undefined || data.validUntil < data.made) throw unreadable(descriptorName);
  if (data.scoringRules !== rulesVersion) throw refused(sentence("reference.scoring"));
  const { made, validUntil, resources: files } = data;
  const { name, publicKey } = data.publisher;
  requireFiles(files);
  return { publisher: shown(name), publicKey, made, validUntil, files };
}

/**
 * True if a datapackage.json is one of a reference table, of whatever version, and not of a bundle.
 * @throws Refusal `bad-input` when it is no JSON.
 */
export function describesTable(text: string): boolean {
  const { data } = beginning.safeParse(parseJson(descriptorName, text));
  return data?.tableVersion !== undefined;
}

function requireTable(value: unknown): void {
  const { data } = beginning.safeParse(value);
  if (data?.profile !== "data-package") throw refused(sentence("reference.profile"));
  if (data.tableVersion !== tableVersion) {
    const version = typeof data.tableVersion === "number" ? data.tableVersion : "?";
    throw refused(sentence("referenceTable.version", { version, known: tableVersion }));
  }
}

function requireFiles(files: readonly DescribedFile[]): void {
  const names = files.map(({ name }) => name);
  const stray = names.find((name) => !described.includes(name));
  if (stray !== undefined) throw refused(sentence("reference.describes", { name: shown(stray) }));
  const missing = described.find((name) => !names.includes(name));
  if (missing !== undefined) throw refused(sentence("reference.missing", { name: missing }));
  if (names.length !== described.length) throw unreadable(descriptorName);
}
