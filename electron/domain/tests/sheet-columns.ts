import type { SheetColumn } from "./definition.ts";
import { definitionOf, testCodes } from "./registry.ts";

/**
 * Returns the columns of results that the tests need, each once: first those that say how a test was done, then those
 * of what was seen, in the order of the tests. A shared column's meaning covers each of its tests.
 */
export function sheetColumns(): readonly SheetColumn[] {
  const all = testCodes.flatMap((test) => definitionOf(test).sheet.columns);
  const merged = [...Map.groupBy(all, ({ name }) => name).values()].map(mergedOf);
  return [...merged.filter(({ kind }) => kind === "way"), ...merged.filter(({ kind }) => kind !== "way")];
}

function mergedOf(same: readonly SheetColumn[]): SheetColumn {
  const [first] = same as [SheetColumn];
  const means = [...new Set(same.map((column) => column.means))].join("; ");
  const kind = same.find((column) => column.kind !== "written")?.kind ?? "written";
  return { ...first, means, kind };
}
