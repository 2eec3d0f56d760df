import { setImmediate } from "node:timers/promises";
import { Refusal } from "../../domain/refusal.ts";
import { type Cells, RowRefused } from "../../domain/tests/cells.ts";
import type { AskedColumn } from "../../domain/tests/definition.ts";
import { sentence } from "../../domain/words.ts";
import { type Blanks, blankIn, filledIn } from "../../sheets/blanks.ts";
import { cellsOf, refuseMoreCells } from "../../sheets/cells.ts";
import { orderOf } from "../../sheets/dates.ts";
import type { LinesRead, Separator, SheetRow } from "../../sheets/grid.ts";
import {
  type Given,
  guessKind,
  type Mapping,
  type MatchedHeaders,
  matchHeaders,
  type SheetKindName,
} from "../../sheets/headers.ts";
import { type PastWays, readPastRow } from "../../sheets/past.ts";
import { readGrid } from "../../sheets/read-grid.ts";
import { readResultRow } from "../../sheets/results.ts";
import { mIsWomen, readRosterRow } from "../../sheets/roster.ts";
import { type Table, tableOf } from "../../sheets/table.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { putRight, type SheetAnswers, type SheetChoices } from "./choices.ts";
import {
  isTaken,
  type KeptBackRow,
  keptBack,
  type Planned,
  type PlannedOutcome,
  type Planner,
  type ReadRow,
  type Reason,
  type RowOutcome,
  rowByRow,
} from "./outcome.ts";
import { planPast } from "./plan-past.ts";
import { planResults } from "./plan-results.ts";
import { planRoster } from "./plan-roster.ts";
import { fieldToLookAt, type Said, unfold } from "./unfold.ts";

/** A sheet as read; its rows' changes are planned later, against the store at that moment. */
export interface ReadSheet {
  readonly kind: SheetKindName;
  readonly headers: readonly string[];
  readonly headerLine: number;
  readonly worksheets: readonly string[];
  readonly worksheet: number;
  readonly separator: Separator;
  /** The first rows as they are, among which the headers may be chosen. */
  readonly start: readonly SheetRow[];
  readonly matched: MatchedHeaders;
  /** As a person said it, or as it was remembered. */
  readonly mapping: Mapping;
  /** Dates may be read in two ways, and none of them decides. */
  readonly asksDateOrder: boolean;
  /** Columns that some row leaves blank, and that can't be left so unasked. */
  readonly asked: readonly AskedColumn[];
  /** Every row by its line. */
  readonly rows: ReadonlyMap<number, SheetRow>;
  /** Rows that are left out by choice. */
  readonly leftOut: readonly SheetRow[];
  readonly unread: readonly KeptBackRow[];
  /** Plans all rows that could be read, in their order and in turns (`at`: ISO 8601 instant). */
  plan(db: ReadableDb, at: string): Generator<undefined, Planned<PlannedOutcome>>;
}

/** What to read a sheet as; `today`: ISO 8601 day. */
export interface SheetReading {
  readonly choices: SheetChoices;
  readonly today: string;
  /** How a sheet with such headers was read last; left out: only what is said now counts. */
  readonly recall?: (kind: SheetKindName, headers: readonly string[]) => Mapping;
}

/** Rows read between two pauses for the caller's other work. */
const bunch = 500;
/** Rows among which the headers may be chosen. */
export const startRows = 20;

/**
 * Reads a sheet in batches of rows. Reads no row if a needed column is missing.
 * @throws Refusal `bad-input` when the file as a whole can't be read.
 */
export async function* readSteps(
  bytes: Uint8Array,
  { choices, today, recall }: SheetReading,
): AsyncGenerator<LinesRead, ReadSheet> {
  const grid = yield* readGrid(bytes, choices.worksheet);
  const { worksheets, worksheet, separator } = grid;
  const table = tableOf({ ...grid, rows: putRight(grid.rows, choices) }, choices.headerLine);
  const kind = choices.kind ?? guessKind(table.headers);
  const mapping = recall?.(kind, table.headers) ?? choices.mapping;
  const matched = matchHeaders(kind, table.headers, mapping, choices.given);
  if (table.rows.length + table.broken.length === 0)
    throw new Refusal("bad-input", sentence("sheets.noRows"));
  const leftOut = table.rows.filter(({ line }) => choices.leftOut.has(line));
  const rows = table.rows.filter(({ line }) => !choices.leftOut.has(line));
  const found = kind === "past" ? orderOf(datesIn(rows, matched)) : null;
  const asksDateOrder = found === "open";
  const order = found === "open" ? choices.dateOrder : found;
  const missing = asksDateOrder && order === null ? [...matched.missing, "date_order"] : matched.missing;
  const { given, answers, blanks } = choices;
  const readable = { ...table, kind, rows, matched: { ...matched, missing }, given, answers, blanks };
  const read = yield* readRows(readable, { today, order: order ?? "day" });
  const about = {
    headers: table.headers,
    headerLine: table.headerLine,
    worksheets,
    worksheet,
    separator,
    leftOut,
    mapping,
  };
  return {
    kind,
    ...about,
    start: grid.rows.slice(0, startRows),
    matched: readable.matched,
    asksDateOrder,
    ...read,
  };
}

function datesIn(rows: readonly SheetRow[], { columns, parts }: MatchedHeaders): string[] {
  const column = columns.get("date");
  const cells = column === undefined ? [] : rows.map((row) => row.cells[column] ?? "");
  return [...cells, ...parts.map(({ date }) => date)];
}

/** Runs {@link readSteps} to its end, yielding to other work between batches. */
export async function readWhole(bytes: Uint8Array, reading: SheetReading): Promise<ReadSheet> {
  const steps = readSteps(bytes, reading);
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
    await setImmediate();
  }
}

interface Readable extends Table {
  readonly matched: MatchedHeaders;
  readonly given: Given;
  readonly answers: SheetAnswers;
  readonly kind: SheetKindName;
  readonly blanks: Blanks;
}

function readRows(sheet: Readable, ways: PastWays): RowSteps {
  switch (sheet.kind) {
    case "roster":
      return readAll(sheet, rosterReader(sheet, ways.today), rowByRow(planRoster));
    case "results":
      return readAll(sheet, readResultRow, planResults);
    case "past":
      return readAll(sheet, (cells) => readPastRow(cells, ways), rowByRow(planPast));
  }
}

function rosterReader({ rows, matched: { columns } }: Readable, today: string) {
  const ways = { today, mIsWomen: mIsWomen(rows.map(({ cells }) => cellsOf(columns, cells)("category"))) };
  return (cells: Cells) => readRosterRow(cells, ways);
}

type RowSteps = Generator<LinesRead, Pick<ReadSheet, "rows" | "unread" | "plan" | "asked">>;
type GoodRow<Row> = ReadRow<Row> & Said;

function* readAll<Row>(
  { headers, rows: all, broken, matched, given, answers, kind, blanks }: Readable,
  read: (cells: Cells) => Row,
  plan: Planner<Row>,
): RowSteps {
  const good: GoodRow<Row>[] = [];
  const unread: KeptBackRow[] = [];
  const asked = new Map<string, AskedColumn>();
  const wanted = matched.missing.length === 0 ? all : [];
  for (const [index, row] of wanted.entries()) {
    for (const { cells, part } of unfold(row, matched, given)) {
      for (const column of blankIn(kind, cells)) asked.set(column.name, column);
      const outcome = readOne(row, headers, { cells: filledIn(kind, cells, blanks), part }, read);
      if ("reason" in outcome) unread.push(outcome);
      else good.push(outcome);
    }
    if (index % bunch === bunch - 1) yield { done: index, total: wanted.length };
  }
  for (const { line, reason } of broken) unread.push({ line, field: null, reason });
  const rows = new Map([...all, ...broken].map((row) => [row.line, row]));
  return {
    rows,
    unread,
    asked: [...asked.values()],
    *plan(db, at) {
      const { outcomes, taking } = yield* plan(db, good, { at, answers });
      return { outcomes: withSources(outcomes, good, headers), taking };
    },
  };
}

/** Plans come in the order of the rows: each with what its row says. */
function withSources(
  outcomes: readonly RowOutcome[],
  good: readonly Said[],
  headers: readonly string[],
): PlannedOutcome[] {
  return outcomes.flatMap((outcome, index) => {
    const said = good[index];
    if (said === undefined) return [];
    return [{ ...(isTaken(outcome) ? outcome : lookedAt(outcome, said, headers)), cells: said.cells }];
  });
}

function lookedAt(row: KeptBackRow, { part }: Said, headers: readonly string[]): KeptBackRow {
  const look = <Why extends Reason>(why: Why): Why => ({
    ...why,
    field: fieldToLookAt(why.field, part, headers),
  });
  return { ...look(row), also: (row.also ?? []).map(look) };
}

function readOne<Row>(
  { line, cells }: SheetRow,
  headers: readonly string[],
  said: Said,
  read: (cells: Cells) => Row,
): GoodRow<Row> | KeptBackRow {
  const width = headers.length;
  try {
    refuseMoreCells(cells, width);
    return { line, row: read(said.cells), ...said };
  } catch (error) {
    if (error instanceof RowRefused) return lookedAt(keptBack(line, error), said, headers);
    throw error;
  }
}
