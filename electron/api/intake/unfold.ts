import type { Cells } from "../../domain/tests/cells.ts";
import { cellsOf } from "../../sheets/cells.ts";
import { restored } from "../../sheets/formula.ts";
import type { SheetRow } from "../../sheets/grid.ts";
import type { Given, MatchedHeaders } from "../../sheets/headers.ts";
import type { WidePart } from "../../sheets/wide.ts";

/** One thing that a row says: a row of a long sheet says one, a row of a wide one says one for each test that was done. */
export interface Said {
  readonly cells: Cells;
  readonly part: WidePart | null;
}

/** What people write where there is nothing. */
const nothing = ["", "-", "–", "—", "n/a", "na", "dns"];

/** What a row says, test by test where the sheet has a column a test. */
export function unfold({ cells }: SheetRow, { columns, parts }: MatchedHeaders, given: Given): Said[] {
  const all = cellsOf(columns, cells, given);
  if (parts.length === 0) return [{ cells: all, part: null }];
  return parts.flatMap((part) => {
    const own = (column: number) => restored((cells[column] ?? "").trim()).trim();
    const isDone = part.own.some((column) => !nothing.includes(own(column).toLowerCase()));
    return isDone ? [{ cells: cellsOfPart(part, own, all), part }] : [];
  });
}

function cellsOfPart(part: WidePart, own: (column: number) => string, all: Cells): Cells {
  return (field) => {
    const column = part.columns.get(field);
    if (column !== undefined) return own(column);
    if (field === "test") return part.test;
    // One time for all tests of a row is when none of them was done.
    if (field === "done_at") return "";
    if (field === "date" && part.date !== "") return part.date;
    return part.says[field] ?? all(field);
  };
}

/** What to look at: the column of a wide sheet by its header, a field of a long one by its name. */
export function fieldToLookAt(
  field: string | null,
  part: WidePart | null,
  headers: readonly string[],
): string | null {
  if (part === null) return field;
  const column = part.columns.get(field ?? "") ?? (isOfWho(field) ? undefined : part.own[0]);
  return column === undefined ? field : (headers[column] ?? field);
}

function isOfWho(field: string | null): boolean {
  return ["bib", "league", "number", "name"].includes(field ?? "");
}
