import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";

/** One page: a station's, or the athletes'. */
export type SheetName = TestCode | "athlete";
/** The pages that can be printed at once. */
export type WhichSheets = SheetName | "all";

/** The pages in the order of print: the athletes' comes last. */
const sheetNames: readonly SheetName[] = [...testCodes, "athlete"];
export const whiches: readonly WhichSheets[] = ["all", ...sheetNames];

/** Returns the pages of a selection. */
export function sheetsOf(which: WhichSheets): readonly SheetName[] {
  return which === "all" ? sheetNames : [which];
}
