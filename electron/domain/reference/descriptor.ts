import { z } from "zod";
import type { BundleKind } from "../privacy/rule.ts";
import { sentence } from "../words.ts";
import { parseJson } from "./json.ts";
import { refused, shown, unreadable } from "./refused.ts";

/** The format versions that can be read; the version written is one of them. */
export const readableVersions: readonly number[] = [2];

export const descriptorName = "datapackage.json";
export const protocolsName = "protocols.json";
/** The file name of the sheet of rows, by kind of bundle. */
export const rowsNames: Readonly<Record<BundleKind, string>> = Object.freeze({
  marks: "marks.csv",
  profiles: "profiles.csv",
});
const everyBundle = ["summary.csv", protocolsName, "codebook.md", "privacy.json"];

/** Every allowed name of a file in a bundle. */
export const fileNames: ReadonlySet<string> = new Set([
  ...[descriptorName, ...everyBundle, rowsNames.marks, rowsNames.profiles],
]);

/** One file as the descriptor describes it. */
export interface DescribedFile {
  readonly name: string;
  readonly bytes: number;
  /** Hash in hexadecimal digits. */
  readonly sha256: string;
}

export interface Descriptor {
  readonly kind: BundleKind;
  readonly demo: boolean;
  readonly rehearsal: boolean;
  /** All files except the descriptor. */
  readonly files: readonly DescribedFile[];
}

const beginning = z.object({ profile: z.unknown().optional(), formatVersion: z.unknown().optional() });

/** The files that a descriptor describes, of so many at most and with paths of such a length. */
export function resourcesOf(most: { readonly files: number; readonly path: number }) {
  const resource = z.object({
    path: z.string().max(most.path),
    bytes: z.int().min(0),
    hash: z.string().regex(/^sha256:[0-9a-f]{64}$/),
  });
  return z
    .array(
      resource.transform(
        ({ path, bytes, hash }): DescribedFile => ({ name: path, bytes, sha256: hash.slice(7) }),
      ),
    )
    .max(most.files);
}

const schema = z.object({
  demo: z.boolean(),
  rehearsal: z.boolean().default(false),
  resources: resourcesOf({ files: 100, path: 1000 }),
});

/**
 * Reads datapackage.json.
 * @throws Refusal `bad-input` when it is of another profile or version, or does not describe the files of a bundle.
 */
export function readDescriptor(text: string): Descriptor {
  const value = parseJson(descriptorName, text);
  requireVersion(value);
  const { data } = schema.safeParse(value);
  if (data === undefined) throw unreadable(descriptorName);
  const { demo, rehearsal, resources: files } = data;
  return { kind: kindOf(files), demo, rehearsal, files };
}

function requireVersion(value: unknown): void {
  const { data } = beginning.safeParse(value);
  if (data?.profile !== "data-package") throw refused(sentence("reference.profile"));
  const { formatVersion } = data;
  if (typeof formatVersion !== "number" || !readableVersions.includes(formatVersion)) {
    const version = typeof formatVersion === "number" ? formatVersion : "?";
    throw refused(sentence("reference.version", { version, known: readableVersions.join(", ") }));
  }
}

/** Returns the kind by the sheet of rows; every file has to be described once, and no other. */
function kindOf(files: readonly DescribedFile[]): BundleKind {
  const names = files.map(({ name }) => name);
  const stray = names.find((name) => !fileNames.has(name) || name === descriptorName);
  if (stray !== undefined) throw refused(sentence("reference.describes", { name: shown(stray) }));
  const kind = names.includes(rowsNames.marks) ? "marks" : "profiles";
  const wanted = [rowsNames[kind], ...everyBundle];
  const missing = wanted.find((name) => !names.includes(name));
  if (missing !== undefined) throw refused(sentence("reference.missing", { name: missing }));
  if (names.length !== wanted.length) throw unreadable(descriptorName);
  return kind;
}
