import { z } from "zod";
import { cellsOf } from "../../sheets/cells.ts";
import type { ColumnName } from "../../sheets/headers.ts";
import { columnsOf } from "../../sheets/headers.ts";
import { testCalled } from "../../sheets/test-words.ts";
import { sentenceSchema } from "../door/shapes.ts";
import { takenSchema } from "../door/sheet-shapes.ts";
import type { TakenRow } from "./outcome.ts";
import type { ReadSheet } from "./read.ts";
import type { PlannedSheet } from "./sheet.ts";

export const previewSchema = takenSchema.extend({
  headers: z.array(z.string()),
  /** Every field that this sheet can have, with the header matched to it. */
  fields: z.array(z.object({ field: z.string(), header: z.string().nullable() })),
  unknown: z.array(z.string()),
  missing: z.array(z.string()),
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

/** Returns the preview of an import: rows that deserve a look come first, known ones last. */
export function previewOf(sheet: ReadSheet, planned: PlannedSheet): Preview {
  const { headers, matched } = sheet;
  const first = [...planned.taken].sort((a, b) => urgency(a) - urgency(b));
  const rows = first.slice(0, shownRows).map((row) => {
    const filled = filledCells(sheet, row.line);
    const cells = row.about === null ? filled : { ...filled, name: row.about.name, league: row.about.league };
    const { line, status, joins, unusual, was } = row;
    return { line, status, joins, unusual, cells, was: was as Record<string, string> };
  });
  const fields = columnsOf[sheet.kind].map((field: ColumnName) => {
    const column = matched.columns.get(field);
    return { field, header: column === undefined ? null : (headers[column] ?? null) };
  });
  const { unknown, missing } = matched;
  return {
    ...takenOf(planned),
    headers: [...headers],
    fields,
    unknown: [...unknown],
    missing: [...missing],
    rows,
  };
}

function urgency({ unusual, status }: TakenRow): number {
  if (unusual !== null) return 0;
  return { changed: 1, new: 2, known: 3 }[status];
}

/** Returns the counts and the first rows not imported. */
export function takenOf(planned: PlannedSheet): z.infer<typeof takenSchema> {
  const keptBack = planned.keptBack.slice(0, shownKeptBack).map((row) => ({ ...row, cells: [...row.cells] }));
  return { kind: planned.kind, counts: planned.counts, keptBack };
}

/** Returns a row's filled cells by field. */
function filledCells({ rows, matched }: ReadSheet, line: number): Record<string, string> {
  const cells = cellsOf(matched.columns, rows.get(line)?.cells ?? []);
  const filled = [...matched.columns.keys()].map((field) => [field, cells(field)] as const);
  const found = Object.fromEntries(filled.filter(([, text]) => text !== ""));
  // A test by its code, however the sheet calls it.
  const test = testCalled(found.test ?? "");
  return test === undefined ? found : { ...found, test };
}
