import type { z } from "zod";
import type { Cells } from "../../domain/tests/cells.ts";
import type { SheetRow } from "../../sheets/grid.ts";
import { type ColumnName, columnsOf } from "../../sheets/headers.ts";
import { testCalled } from "../../sheets/test-words.ts";
import type { takenSchema } from "../door/sheet-shapes.ts";
import type { TakenRow } from "./outcome.ts";
import type { ReadSheet } from "./read.ts";
import type { PlannedSheet } from "./sheet.ts";

/** Most rows of each kind in a preview; the counts are of all. */
const shownRows = 50;
const shownKeptBack = 200;
const shownQuestions = 50;

/** Returns the preview of an import: rows that deserve a look come first, known ones last. */
export function previewOf(sheet: ReadSheet, planned: PlannedSheet) {
  const { headers, matched } = sheet;
  const first = [...planned.taken].sort((a, b) => urgency(a) - urgency(b));
  const rows = first.slice(0, shownRows).map((row) => {
    const filled = filledCells(sheet, row.cells);
    const cells = row.about === null ? filled : { ...filled, name: row.about.name, league: row.about.league };
    const { line, status, joins, unusual, was } = row;
    return { line, status, joins, unusual, cells, was: was as Record<string, string> };
  });
  const fields = columnsOf[sheet.kind].map((field: ColumnName) => {
    const column = matched.columns.get(field);
    return { field, header: column === undefined ? null : (headers[column] ?? null) };
  });
  const { unknown, missing } = matched;
  const { headerLine, worksheet, worksheets, asksDateOrder } = sheet;
  return {
    ...takenOf(planned),
    ...{ headerLine, worksheet, worksheets: [...worksheets], asksDateOrder },
    /** Columns that some row leaves blank and that have to be asked for, with what can be meant. */
    asked: sheet.asked.map(({ name, options }) => ({ name, options: [...options] })),
    /** Field → header, as it was said or remembered. */
    mapping: { ...sheet.mapping },
    /** True where a row holds several tests, a column each. */
    wide: matched.parts.length > 0,
    ...questionsOf(planned),
    /** The first rows of the sheet, among which the headers may be chosen. */
    start: sheet.start.map(shownLine),
    /** Rows that are left out by choice. */
    leftOut: sheet.leftOut.map(shownLine),
    headers: [...headers],
    /** Every field that this sheet can have, with the header matched to it. */
    fields,
    unknown: [...unknown],
    missing: [...missing],
    rows,
  };
}

/** The first questions of who is who; nothing is imported before all are answered. */
function questionsOf({ questions }: PlannedSheet) {
  const shown = questions.slice(0, shownQuestions).map(({ candidates, lines, ...rest }) => ({
    ...rest,
    candidates: [...candidates],
    lines: [...lines],
  }));
  return { questions: shown, questionCount: questions.length };
}

function urgency({ unusual, status }: TakenRow): number {
  if (unusual !== null) return 0;
  return { changed: 1, new: 2, known: 3 }[status];
}

/** A row in one line, cut where it is long. */
function shownLine({ line, cells }: SheetRow): { line: number; text: string } {
  const text = cells.filter((cell) => cell.trim() !== "").join(" · ");
  return { line, text: text.length > 120 ? `${text.slice(0, 119)}…` : text };
}

/** The counts and the first kept-back rows. */
export function takenOf(planned: PlannedSheet): z.infer<typeof takenSchema> {
  const keptBack = planned.keptBack
    .slice(0, shownKeptBack)
    .map(({ ask: _, ...row }) => ({ ...row, also: [...row.also], cells: [...row.cells] }));
  return { kind: planned.kind, counts: planned.counts, keptBack };
}

/** The cells of a row that are filled in, by field. */
function filledCells({ kind }: ReadSheet, cells: Cells): Record<string, string> {
  const filled = columnsOf[kind].map((field) => [field, cells(field)] as const);
  const found = Object.fromEntries(filled.filter(([, text]) => text !== ""));
  // A test by its code, however the sheet calls it.
  const test = testCalled(found.test ?? "");
  return test === undefined ? found : { ...found, test };
}
