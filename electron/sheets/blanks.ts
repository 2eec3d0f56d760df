import type { Cells } from "../domain/tests/cells.ts";
import type { AskedColumn } from "../domain/tests/definition.ts";
import { definitionOf, protocolOf, type TestCode } from "../domain/tests/registry.ts";
import type { SheetKindName } from "./headers.ts";
import { testCalled } from "./test-words.ts";

/** What a person says that blank cells mean, by field. */
export type Blanks = Readonly<Record<string, string>>;

/** The columns of a row that can't be left blank unasked: how the test was done, and what its own sheet asks. */
function askedIn(kind: SheetKindName, test: TestCode | undefined): readonly AskedColumn[] {
  if (test === undefined) return [];
  const { variants } = protocolOf(test);
  const ways = variants.length > 1 ? [{ name: "variant", options: variants }] : [];
  return kind === "results" ? [...ways, ...(definitionOf(test).sheet.asked ?? [])] : ways;
}

/** Returns the columns that this row leaves blank and that have to be asked for. */
export function blankIn(kind: SheetKindName, cells: Cells): readonly AskedColumn[] {
  return askedIn(kind, testCalled(cells("test"))).filter(({ name }) => cells(name) === "");
}

/** The row's cells with what was said of blank ones. */
export function filledIn(kind: SheetKindName, cells: Cells, blanks: Blanks): Cells {
  const said = new Map(blankIn(kind, cells).map(({ name }) => [name, blanks[name] ?? ""]));
  return (field) => said.get(field) ?? cells(field);
}
