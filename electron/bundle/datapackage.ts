import { createHash } from "node:crypto";
import { testCodes } from "../domain/tests/registry.ts";
import { type Contents, formatVersion, jsonFile, type TextFile } from "./contents.ts";
import { inWords } from "./english.ts";
import { marksSchema, profilesSchema, summarySchema } from "./schemas.ts";
import { profileTests } from "./sheets.ts";

/** The other files of the bundle, by role. */
export interface Described {
  /** marks.csv or profiles.csv. */
  readonly rows: TextFile;
  readonly summary: TextFile;
  readonly protocols: TextFile;
  readonly privacy: TextFile;
  readonly codebook: TextFile;
}

/** Returns a SHA-256 in hexadecimal digits. */
export function sha256(bytes: Uint8Array | string): string {
  return createHash("sha256").update(bytes).digest("hex");
}

/** Describes a file of a Data Package: its size and hash, with what only its kind has. */
export function resource({ name, text }: TextFile, title: string, more: object) {
  return {
    name: name.replace(/\.\w+$/, ""),
    path: name,
    title,
    encoding: "utf-8",
    bytes: Buffer.byteLength(text),
    hash: `sha256:${sha256(text)}`,
    ...more,
  };
}

const dialect = { delimiter: ",", lineTerminator: "\r\n", quoteChar: '"', doubleQuote: true, header: true };

/** Describes a sheet of a Data Package, in the dialect in which all of ours are written. */
export function table(file: TextFile, title: string, schema: object) {
  const csv = { profile: "tabular-data-resource", format: "csv", mediatype: "text/csv" };
  return resource(file, title, { ...csv, dialect, schema });
}

function rowsTable({ kind, rows }: Contents, file: TextFile) {
  return kind === "marks"
    ? table(file, "One row per result", marksSchema)
    : table(file, "One row per athlete", profilesSchema(profileTests(rows)));
}

/** Returns the part of a name for a bundle without real data: `-demo`, `-rehearsal`, or nothing. */
export function occasionOf({ demo, rehearsal }: Pick<Contents, "demo" | "rehearsal">): string {
  return `${demo ? "-demo" : ""}${rehearsal ? "-rehearsal" : ""}`;
}

/** Makes the Frictionless Data Package descriptor, version 1, without a time: `created` is left out. */
export function descriptorFile(contents: Contents, files: Described): TextFile {
  const { demo, rehearsal } = contents;
  const invented = demo ? " These athletes are made up: a demo, not data." : "";
  const tried = rehearsal ? " A rehearsal, not to be shared." : "";
  const what =
    contents.kind === "marks"
      ? "one row per result, rows not linked"
      : "one row per athlete, few tests included";
  const json = { format: "json", mediatype: "application/json" };
  return jsonFile("datapackage.json", {
    profile: "data-package",
    name: `tapeline-${contents.kind}${occasionOf(contents)}-${contents.quarter.toLowerCase()}`,
    title: `Fitness test results of a roller derby testing day, ${contents.quarter}`,
    description: `${inWords(testCodes.length)} field tests, athletes not named, ${what}, results reported as intervals. Read codebook.md first.${invented}${tried}`,
    formatVersion,
    ...{ demo, rehearsal },
    resources: [
      rowsTable(contents, files.rows),
      table(files.summary, "Count and quartiles of each test and variant", summarySchema),
      resource(files.protocols, "How each test was run", json),
      resource(files.privacy, "What was generalised and suppressed", json),
      resource(files.codebook, "What every column means", { format: "md", mediatype: "text/markdown" }),
    ],
  });
}
