import type { KeyObject } from "node:crypto";
import { unzipSync, zipSync } from "fflate";
import { newKey, readKey } from "../../../electron/api/reference/signature.ts";
import type { GroupOfMarks } from "../../../electron/domain/reference-table/table.ts";
import { fingerprint } from "../../../electron/domain/tests/fingerprint.ts";
import { defaultParameters } from "../../../electron/domain/tests/registry.ts";
import { type TableToWrite, writeTable } from "../../../electron/reference/write-table.ts";

/** An invented publisher's key, another one each time. */
export function invented(): KeyObject {
  const key = readKey(newKey());
  if (key === undefined) throw new Error("No key was made.");
  return key;
}

/** Push-ups of women from 25 to 29: the p-th percentile is from p / 5 up to one more. */
export const group: GroupOfMarks = {
  test: "push-up",
  variant: "full",
  fingerprint: fingerprint("push-up", "full", defaultParameters("push-up")),
  ...{ category: "women", ageBand: "25 to 29", marks: 400, halls: 12, countsAs: 250 },
  ...{ from: "2026-Q1", to: "2026-Q3" },
  percentiles: Array.from({ length: 19 }, (_none, index) => {
    return { percentile: 5 * (index + 1), low: index + 1, high: index + 2 };
  }),
};

export const plainTable: TableToWrite = {
  publisher: "The harbour table",
  ...{ made: "2026-11-01", validUntil: "2028-11-01" },
  bundles: ["a".repeat(64), "b".repeat(64)],
  groups: [group],
};

/** A table of these groups, written and signed as the command does. */
export function tableOf(more: Partial<TableToWrite> = {}, key = invented()): Uint8Array {
  return writeTable({ ...plainTable, ...more }, key);
}

/** The same zip with its files changed. */
export function repacked(zip: Uint8Array, change: (files: Record<string, Uint8Array>) => void): Uint8Array {
  const files = unzipSync(zip);
  change(files);
  return zipSync(files, { level: 0 });
}
