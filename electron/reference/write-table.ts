import type { KeyObject } from "node:crypto";
import { publicKeyOf, signatureFile } from "../api/reference/signature.ts";
import { jsonFile, type TextFile } from "../bundle/contents.ts";
import { resource, table as sheetOf } from "../bundle/datapackage.ts";
import { zipOf } from "../bundle/zip.ts";
import { tableFiles, tableVersion } from "../domain/reference-table/descriptor.ts";
import { bundleColumns, groupColumns, percentileColumns } from "../domain/reference-table/rows.ts";
import type { GroupOfMarks, ReferenceTable } from "../domain/reference-table/table.ts";
import { protocolOf, rulesVersion, testCodes } from "../domain/tests/registry.ts";
import { inUnit } from "../domain/units.ts";
import { writeSheet } from "../sheets/write.ts";
import { tableCodebook } from "./table-codebook.ts";
import { bundlesSchema, groupsSchema, percentilesSchema } from "./table-schemas.ts";

/** A reference table before it is signed; its groups in any order. */
export type TableToWrite = Omit<ReferenceTable, "publicKey">;

/** Writes a reference table as a signed Data Package; equal tables by equal keys give equal bytes. */
export function writeTable(table: TableToWrite, key: KeyObject): Uint8Array {
  const groups = inOrder(table.groups);
  const files = [
    { name: tableFiles.groups, text: groupsSheet(groups) },
    { name: tableFiles.percentiles, text: percentilesSheet(groups) },
    {
      name: tableFiles.bundles,
      text: writeSheet(
        bundleColumns,
        table.bundles.toSorted().map((hash) => [hash]),
      ),
    },
    { name: tableFiles.codebook, text: tableCodebook(table) },
  ] as const;
  const descriptor = descriptorFile(table, publicKeyOf(key), files);
  const signature = signatureFile(new TextEncoder().encode(descriptor.text), key);
  return zipOf([descriptor, ...files, { name: tableFiles.signature, text: signature }]);
}

/** Sorts groups by test and then by the text of the rest, so that the order says nothing. */
function inOrder(groups: readonly GroupOfMarks[]): GroupOfMarks[] {
  const keyOf = ({ test, fingerprint, category, ageBand }: GroupOfMarks) =>
    JSON.stringify([testCodes.indexOf(test), fingerprint, category, ageBand]);
  const keyed = groups.map((group) => ({ key: keyOf(group), group }));
  return keyed.sort((a, b) => (a.key < b.key ? -1 : 1)).map(({ group }) => group);
}

function groupsSheet(groups: readonly GroupOfMarks[]): string {
  return writeSheet(
    groupColumns,
    groups.map((group, index) => {
      const { test, variant, fingerprint, category, ageBand, marks, halls, countsAs, from, to } = group;
      const { grain, better } = protocolOf(test);
      return [
        ...[index + 1, test, variant, fingerprint, category, ageBand, marks, halls, countsAs, from, to],
        ...[grain.unit, better],
      ];
    }),
  );
}

function percentilesSheet(groups: readonly GroupOfMarks[]): string {
  return writeSheet(
    percentileColumns,
    groups.flatMap(({ test, percentiles }, index) => {
      const { grain } = protocolOf(test);
      const inUnits = (bound: number | null) => (bound === null ? null : inUnit(grain, bound));
      return percentiles.map(({ percentile, low, high }) => [
        ...[index + 1, percentile, inUnits(low), inUnits(high)],
      ]);
    }),
  );
}

type Files = readonly [groups: TextFile, percentiles: TextFile, bundles: TextFile, codebook: TextFile];

/** The Frictionless Data Package descriptor, version 1. */
function descriptorFile(table: TableToWrite, publicKey: string, files: Files): TextFile {
  const [groups, percentiles, bundles, codebook] = files;
  const { publisher, made, validUntil } = table;
  return jsonFile(tableFiles.descriptor, {
    profile: "data-package",
    name: `tapeline-reference-table-${made}`,
    title: `Percentiles of roller derby fitness tests, ${made}`,
    description: "Made of the anonymised bundles of many halls. Read codebook.md first.",
    tableVersion,
    scoringRules: rulesVersion,
    publisher: { name: publisher, publicKey },
    ...{ made, validUntil },
    resources: [
      sheetOf(groups, "Groups of results: how many, of how many halls", groupsSchema),
      sheetOf(percentiles, "Between which bounds the percentiles of each group lie", percentilesSchema),
      sheetOf(bundles, "Content hashes of the bundles that it is made of", bundlesSchema),
      resource(codebook, "What every column means", { format: "md", mediatype: "text/markdown" }),
    ],
  });
}
