import { z } from "zod";
import type { Cells } from "../../domain/tests/cells.ts";
import type { SheetRow } from "../../sheets/grid.ts";
import { type ColumnName, columnsOf } from "../../sheets/headers.ts";
import { testCalled } from "../../sheets/test-words.ts";
import { saidPersonSchema, sentenceSchema } from "../door/shapes.ts";
import { takenSchema } from "../door/sheet-shapes.ts";
import type { TakenRow } from "./outcome.ts";
import type { ReadSheet } from "./read.ts";
import type { PlannedSheet } from "./sheet.ts";

const questionSchema = z.object({
  id: z.string(),
  about: z.enum(["league", "person"]),
  /** As the sheet has it. */
  said: saidPersonSchema,
  /** An answer is the place of one of them, from 0, or `new`. */
  candidates: z.array(saidPersonSchema),
  mayBeNew: z.boolean(),
  takesNew: z.boolean(),
  loses: z.string().nullable(),
  line: z.int().nullable(),
  lines: z.array(z.int()),
});

export const previewSchema = takenSchema.extend({
  headers: z.array(z.string()),
  /** Every field that this sheet can have, with the header matched to it. */
  fields: z.array(z.object({ field: z.string(), header: z.string().nullable() })),
  unknown: z.array(z.string()),
  missing: z.array(z.string()),
  /** Field → header, as it was said or remembered. */
  mapping: z.record(z.string(), z.string()),
  headerLine: z.int(),
  /** The first rows of the sheet, among which the headers may be chosen. */
  start: z.array(z.object({ line: z.int(), text: z.string() })),
  worksheets: z.array(z.string()),
  worksheet: z.int(),
  /** A row holds several tests, a column each. */
  wide: z.boolean(),
  asksDateOrder: z.boolean(),
  /** The first questions of who is who; nothing is imported before all are answered. */
  questions: z.array(questionSchema),
  questionCount: z.int(),
  /** Rows that are left out by choice. */
  leftOut: z.array(z.object({ line: z.int(), text: z.string() })),
  rows: z.array(
    z.object({
      line: z.int(),
      status: z.enum(["new", "changed", "known"]),
      joins: z.boolean(),
      unusual: sentenceSchema.nullable(),
      cells: z.record(z.string(), z.string()),
      was: z.record(z.string(), z.string()),
    }),
  ),
});

export type Preview = z.infer<typeof previewSchema>;

/** Most rows of each kind in a preview; the counts are of all. */
const shownRows = 50;
const shownKeptBack = 200;
const shownQuestions = 50;

/** Returns the preview of an import: rows that deserve a look come first, known ones last. */
export function previewOf(sheet: ReadSheet, planned: PlannedSheet): Preview {
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
    mapping: { ...sheet.mapping },
    wide: matched.parts.length > 0,
    ...questionsOf(planned),
    start: sheet.start.map(shownLine),
    leftOut: sheet.leftOut.map(shownLine),
    headers: [...headers],
    fields,
    unknown: [...unknown],
    missing: [...missing],
    rows,
  };
}

function questionsOf({ questions }: PlannedSheet): Pick<Preview, "questions" | "questionCount"> {
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
    .map((row) => ({ ...row, also: [...row.also], cells: [...row.cells] }));
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
