import { z } from "zod";
import { sheetLimits } from "../../domain/sheets/limits.ts";
import type { Blanks } from "../../sheets/blanks.ts";
import { type DateOrder, dateOrders } from "../../sheets/dates.ts";
import type { SheetRow } from "../../sheets/grid.ts";
import { type Given, type Mapping, type SheetKindName, sheetKinds } from "../../sheets/headers.ts";

const isoDay = z.iso.date();
const answer = z.union([z.literal("new"), z.int().nonnegative().max(100)]);
const row = z.string().regex(/^\d{1,7}$/);

/** What a person says about a sheet that the sheet does not say itself; everything may be left out. */
export const choicesShape = {
  /** Left out: what its headers say. */
  kind: z.enum(sheetKinds).optional(),
  /** Field → header, for headers that don't say it themselves. */
  mapping: z.record(z.string().max(40), z.string().max(1000)).default({}),
  /** The line with the headers; left out: where they are found. */
  headerLine: z.int().positive().optional(),
  /** The worksheet of a workbook, from 0; left out: the first with something in it. */
  worksheet: z.int().nonnegative().max(10_000).optional(),
  /** The league of all rows that don't say one. */
  league: z.string().trim().max(80).optional(),
  /** The day of all results that don't say one. */
  date: isoDay.optional(),
  /** Which comes first in dates that could be read in two ways. */
  dateOrder: z.enum(dateOrders).optional(),
  /** What blank cells mean, of those columns that can't be left blank unasked: field → text. */
  blanks: z.record(z.string().max(40), z.string().max(40)).default({}),
  /** Cells that were put right: line → column (from 0) → text. */
  edits: z.record(row, z.record(row, z.string().max(1000))).default({}),
  /** Lines that are left out by choice. */
  leftOut: z.array(z.int().positive()).max(20_000).default([]),
  /** Who is who: question → none of the candidates, or one of them (from 0). */
  answers: z.record(z.string().regex(/^[0-9a-f]{64}$/), answer).default({}),
  /** What becomes of rows whose question nobody answered: the sheet waits, or they are not imported. */
  unanswered: z.enum(["ask", "keepBack"]).default("ask"),
};

const choicesSchema = z.object(choicesShape);

/** Answers to the questions of a sheet, by their ids. */
export type SheetAnswers = Readonly<Record<string, z.output<typeof answer>>>;

export interface SheetChoices {
  readonly kind: SheetKindName | null;
  readonly mapping: Mapping;
  readonly headerLine: number | null;
  readonly worksheet: number | null;
  readonly given: Given;
  readonly dateOrder: DateOrder | null;
  readonly blanks: Blanks;
  readonly edits: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly leftOut: ReadonlySet<number>;
  readonly answers: SheetAnswers;
  readonly unanswered: "ask" | "keepBack";
}

/** Nothing said: everything as the sheet says it. */
export function choicesOf(
  kind: SheetKindName | null,
  said: Partial<z.output<typeof choicesSchema>> = {},
): SheetChoices {
  const {
    mapping = {},
    headerLine,
    worksheet,
    league,
    date,
    dateOrder,
    blanks = {},
    edits = {},
    leftOut = [],
    answers = {},
    unanswered = "ask",
  } = said;
  return {
    kind,
    mapping,
    headerLine: headerLine ?? null,
    worksheet: worksheet ?? null,
    given: { ...(league !== undefined && { league }), ...(date !== undefined && { date }) },
    dateOrder: dateOrder ?? null,
    blanks,
    edits,
    leftOut: new Set(leftOut),
    answers,
    unanswered,
  };
}

/** The rows of a sheet with the cells that were put right. */
export function putRight(rows: readonly SheetRow[], { edits }: SheetChoices): readonly SheetRow[] {
  return rows.map((each) => {
    const changed = edits[each.line];
    if (changed === undefined) return each;
    const cells = [...each.cells];
    for (const [column, text] of Object.entries(changed)) setCell(cells, Number(column), text);
    return { line: each.line, cells };
  });
}

function setCell(cells: string[], column: number, text: string): void {
  // A column beyond all that a sheet may have is no cell of it.
  if (column >= sheetLimits.columns) return;
  while (cells.length < column) cells.push("");
  cells[column] = text;
}
