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
  const first = [...planned.taken].sort((a, b) => urgency(a) - urgency(b));
  const rows = first.slice(0, shownRows).map((row) => {
    const filled = filledCells(sheet, row.cells);
    const cells = row.about === null ? filled : { ...filled, name: row.about.name, league: row.about.league };
    const { line, status, joins, unusual, was } = row;
    return { line, status, joins, unusual, cells, was: was as Record<string, string> };
  });
  return {
    ...takenOf(planned),
    ...formOf(sheet, columnsOf[sheet.kind]),
    asksDateOrder: sheet.asksDateOrder,
    /** Columns that some row leaves blank and that have to be asked for, with what can be meant. */
    asked: sheet.asked.map(({ name, options }) => ({ name, options: [...options] })),
    /** True where a row holds several tests, a column each. */
    wide: sheet.matched.parts.length > 0,
    ...questionsOf(planned),
    /** Rows that are left out by choice. */
    leftOut: sheet.leftOut.map(shownLine),
    rows,
  };
}

/** What was read of any sheet. */
export type ReadForm = Pick<
  ReadSheet,
  "headers" | "headerLine" | "worksheets" | "worksheet" | "start" | "matched" | "mapping"
>;

/** Returns how a sheet was read, as far as a person can say it otherwise; `columns`: all fields that it can have. */
export function formOf({ headers, matched, ...read }: ReadForm, columns: readonly ColumnName[]) {
  return {
    headerLine: read.headerLine,
    worksheet: read.worksheet,
    worksheets: [...read.worksheets],
    /** The first rows of the sheet, among which the headers may be chosen. */
    start: read.start.map(shownLine),
    headers: [...headers],
    /** Field → header, as it was said or remembered. */
    mapping: { ...read.mapping },
    /** Every field with the header matched to it. */
    fields: columns.map((field) => {
      const column = matched.columns.get(field);
      return { field, header: column === undefined ? null : (headers[column] ?? null) };
    }),
    unknown: [...matched.unknown],
    missing: [...matched.missing],
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
