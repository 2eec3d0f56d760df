import { setImmediate } from "node:timers/promises";
import { Refusal } from "../../domain/refusal.ts";
import { type Cells, RowRefused } from "../../domain/tests/cells.ts";
import { sentence } from "../../domain/words.ts";
import { cellsOf } from "../../sheets/cells.ts";
import type { LinesRead, SheetRow } from "../../sheets/grid.ts";
import {
  type ColumnName,
  guessKind,
  type Mapping,
  type MatchedHeaders,
  matchHeaders,
  type SheetKindName,
} from "../../sheets/headers.ts";
import { readPastRow } from "../../sheets/past.ts";
import { readGrid } from "../../sheets/read-grid.ts";
import { readResultRow } from "../../sheets/results.ts";
import { mIsWomen, readRosterRow } from "../../sheets/roster.ts";
import { type Table, tableOf } from "../../sheets/table.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type KeptBackRow, keptBack, type ReadRow, type RowOutcome } from "./outcome.ts";
import { planPast } from "./plan-past.ts";
import { planResults } from "./plan-results.ts";
import { planRoster } from "./plan-roster.ts";

/** A sheet as read; its rows' changes are planned later, against the store at that moment. */
export interface ReadSheet {
  readonly kind: SheetKindName;
  readonly headers: readonly string[];
  readonly matched: MatchedHeaders;
  /** Every row by its line. */
  readonly rows: ReadonlyMap<number, SheetRow>;
  readonly unread: readonly KeptBackRow[];
  /** Plans all rows that could be read, in their order (`at`: ISO 8601 instant). */
  plan(db: ReadableDb, at: string): RowOutcome[];
}

/** The options for reading a sheet; `kind` null: by its headers. `today`: ISO 8601 day. */
export interface SheetReading {
  readonly kind: SheetKindName | null;
  readonly mapping: Mapping;
  readonly today: string;
}

/** Rows read between two pauses for the caller's other work. */
const bunch = 500;

/**
 * Reads a sheet in batches of rows. Reads no row if a needed column is missing.
 * @throws Refusal `bad-input` when the file as a whole can't be read.
 */
export async function* readSteps(
  bytes: Uint8Array,
  reading: SheetReading,
): AsyncGenerator<LinesRead, ReadSheet> {
  const table = tableOf(yield* readGrid(bytes, null));
  const kind = reading.kind ?? guessKind(table.headers);
  const matched = matchHeaders(kind, table.headers, reading.mapping);
  if (table.rows.length + table.broken.length === 0)
    throw new Refusal("bad-input", sentence("sheets.noRows"));
  const { rows, unread, plan } = yield* readRows(kind, table, matched, reading.today);
  return { kind, headers: table.headers, matched, rows, unread, plan };
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

function readRows(kind: SheetKindName, table: Table, matched: MatchedHeaders, today: string): RowSteps {
  switch (kind) {
    case "roster":
      return readAll(table, matched, rosterReader(table, matched, today), planRoster);
    case "results":
      return readAll(table, matched, readResultRow, planResults);
    case "past":
      return readAll(table, matched, (cells) => readPastRow(cells, today), planPast);
  }
}

function rosterReader({ rows }: Table, { columns }: MatchedHeaders, today: string) {
  const ways = { today, mIsWomen: mIsWomen(rows.map(({ cells }) => cellsOf(columns, cells)("category"))) };
  return (cells: Cells) => readRosterRow(cells, ways);
}

type RowSteps = Generator<LinesRead, Pick<ReadSheet, "rows" | "unread" | "plan">>;

function* readAll<Row>(
  table: Table,
  { columns, missing }: MatchedHeaders,
  read: (cells: Cells) => Row,
  plan: (db: ReadableDb, rows: readonly ReadRow<Row>[], at: string) => RowOutcome[],
): RowSteps {
  const good: ReadRow<Row>[] = [];
  const unread: KeptBackRow[] = [];
  const wanted = missing.length === 0 ? table.rows : [];
  for (const [index, row] of wanted.entries()) {
    const outcome = readRow(row, table.headers.length, columns, read);
    if ("reason" in outcome) unread.push(outcome);
    else good.push(outcome);
    if (index % bunch === bunch - 1) yield { done: index, total: wanted.length };
  }
  for (const { line, reason } of table.broken) unread.push({ line, field: null, reason });
  const rows = new Map([...table.rows, ...table.broken].map((row) => [row.line, row]));
  return { rows, unread, plan: (db, at) => plan(db, good, at) };
}

function readRow<Row>(
  { line, cells }: SheetRow,
  width: number,
  columns: ReadonlyMap<ColumnName, number>,
  read: (cells: Cells) => Row,
): ReadRow<Row> | KeptBackRow {
  try {
    if (cells.length > width && cells.slice(width).some((cell) => cell.trim() !== "")) {
      throw new RowRefused(
        null,
        sentence("sheets.row.tooManyCells", { count: cells.length, columns: width }),
      );
    }
    return { line, row: read(cellsOf(columns, cells)) };
  } catch (error) {
    if (error instanceof RowRefused) return keptBack(line, error);
    throw error;
  }
}
