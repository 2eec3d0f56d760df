import { randomUUID } from "node:crypto";
import { setImmediate } from "node:timers/promises";
import { Refusal } from "../../domain/refusal.ts";
import type { Cells } from "../../domain/tests/cells.ts";
import { sentence } from "../../domain/words.ts";
import type { Separator } from "../../sheets/grid.ts";
import { isAddedHeader, type SheetKindName } from "../../sheets/headers.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Topic } from "../../store/connection/store.ts";
import { takeImportStep } from "../../store/steps/take-step.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { choicesOf, type SheetChoices } from "./choices.ts";
import { rememberMapping } from "./forms.ts";
import {
  isTaken,
  type KeptBackRow,
  keptBack,
  type Planned,
  type PlannedOutcome,
  type Reason,
  type TakenRow,
  type Taking,
} from "./outcome.ts";
import { type Question, RowAsked } from "./questions.ts";
import { type ReadSheet, readWhole, type SheetReading } from "./read.ts";

/** Counts of a sheet's rows by kind. `keptBack` rows are not imported; `joined` ones are added to the day's list. */
interface Counts {
  readonly new: number;
  readonly changed: number;
  readonly known: number;
  readonly joined: number;
  readonly keptBack: number;
  readonly unusual: number;
}

/** A row not imported, with its cells as in the sheet. */
interface KeptBackCells extends KeptBackRow {
  readonly also: readonly Reason[];
  readonly cells: readonly string[];
}

/** A row that is taken, with what it says by field. */
type PlannedRow = TakenRow & { readonly cells: Cells };

/** What a sheet comes to at the moment of asking. */
export interface PlannedSheet {
  readonly kind: SheetKindName;
  readonly headers: readonly string[];
  readonly separator: Separator;
  readonly counts: Counts;
  readonly taken: readonly PlannedRow[];
  /** All of them, by line. */
  readonly keptBack: readonly KeptBackCells[];
  /** What people have to say before the rows of those lines can be imported. */
  readonly questions: readonly AskedLines[];
  readonly taking: Taking;
}

/** A question, and the lines that wait for its answer. */
interface AskedLines extends Question {
  readonly lines: readonly number[];
}

/** How to read a sheet now. */
export function readingAt(desk: Desk, choices: SheetChoices): SheetReading {
  return { choices, today: isoDate(desk.now()) };
}

/**
 * Reads a sheet without blocking anything; changes nothing.
 * @throws Refusal `bad-input` when it can't be read as a whole.
 */
export function readSheet(
  desk: Desk,
  kind: SheetKindName | null,
  bytes: Uint8Array,
  choices: SheetChoices = choicesOf(kind),
): Promise<ReadSheet> {
  return readWhole(bytes, readingAt(desk, choices));
}

/** Plans a sheet's import without changing anything. @throws Refusal `unavailable` without the day that it needs. */
export function planSheet(db: ReadableDb, sheet: ReadSheet, at: string): PlannedSheet {
  const turns = sheet.plan(db, at);
  for (;;) {
    const turn = turns.next();
    if (turn.done) return plannedSheet(sheet, turn.value);
  }
}

/** The same, yielding to other work: what changes meanwhile may make it another plan (`taking.holds`). */
export async function planInTurns(db: ReadableDb, sheet: ReadSheet, at: string): Promise<PlannedSheet> {
  const turns = sheet.plan(db, at);
  for (;;) {
    const turn = turns.next();
    await setImmediate();
    if (turn.done) return plannedSheet(sheet, turn.value);
  }
}

function plannedSheet(sheet: ReadSheet, { outcomes, taking }: Planned<PlannedOutcome>): PlannedSheet {
  const taken = outcomes.filter((outcome) => isTaken(outcome));
  const outside = outcomes.filter((outcome) => !isTaken(outcome)) as KeptBackRow[];
  const refused = outside.filter(({ ask }) => ask === undefined);
  const outsideRows = keptBackCells([...refused, ...sheet.unread], sheet);
  return {
    kind: sheet.kind,
    headers: sheet.headers,
    separator: sheet.separator,
    counts: countsOf(taken, outsideRows.length),
    taken,
    keptBack: outsideRows,
    questions: askedLines(outside),
    taking,
  };
}

/** Each question once, with all rows that wait for it. */
function askedLines(rows: readonly KeptBackRow[]): AskedLines[] {
  const all = new Map<string, { question: Question; lines: Set<number> }>();
  for (const { ask, line } of rows) {
    if (ask === undefined) continue;
    const asked = all.get(ask.id) ?? { question: ask, lines: new Set() };
    asked.lines.add(line);
    all.set(ask.id, asked);
  }
  return [...all.values()].map(({ question, lines }) => ({ ...question, lines: [...lines] }));
}

function keptBackCells(rows: readonly KeptBackRow[], sheet: ReadSheet): KeptBackCells[] {
  return byLine(rows).map((row) => ({ ...row, cells: sheet.rows.get(row.line)?.cells ?? [] }));
}

/** One row a line with all its reasons, each once: of a wide sheet several tests of one line may be wrong. */
function byLine(rows: readonly KeptBackRow[]): (KeptBackRow & { readonly also: readonly Reason[] })[] {
  const lines = [...Map.groupBy(rows, ({ line }) => line)];
  return lines
    .map(([line, same]) => {
      const [first, ...also] = eachOnce(same.flatMap((row) => [row, ...(row.also ?? [])]));
      return { line, ...(first as Reason), also };
    })
    .sort((a, b) => a.line - b.line);
}

/** What is wrong with whom a row is about is wrong for each of its tests. */
function eachOnce(reasons: readonly Reason[]): Reason[] {
  const all = reasons.map(
    ({ field, reason }) => [JSON.stringify([field, reason]), { field, reason }] as const,
  );
  return [...new Map(all).values()];
}

function countsOf(taken: readonly TakenRow[], keptBack: number): Counts {
  const count = (is: (row: TakenRow) => boolean) => taken.filter(is).length;
  return {
    new: count(({ status }) => status === "new"),
    changed: count(({ status }) => status === "changed"),
    known: count(({ status }) => status === "known"),
    joined: count(({ joins }) => joins),
    keptBack,
    unusual: count(({ unusual }) => unusual !== null),
  };
}

const topicsOf: Readonly<Record<SheetKindName, readonly Topic[]>> = {
  roster: ["people", "entrants"],
  results: ["attempts"],
  past: ["people", "attempts"],
};

/**
 * Imports all good rows of a sheet in one transaction, or none; the same sheet again changes nothing. The plan is made
 * before, so that entries of others go on meanwhile, and again inside the transaction where it no longer holds: entries since
 * then count.
 * @throws Refusal when the sheet as a whole can't be imported.
 */
export async function takeSheet(
  desk: Desk,
  kind: SheetKindName | null,
  bytes: Uint8Array,
  choices: SheetChoices = choicesOf(kind),
  file = "",
): Promise<PlannedSheet> {
  const sheet = await readSheet(desk, kind, bytes, choices);
  refuseMissing(sheet);
  const before = await planInTurns(desk.store.db, sheet, desk.now().toISOString());
  return desk.store.write(topicsOf[sheet.kind], (db) => {
    const at = desk.now().toISOString();
    const { taking } = before;
    const planned = answered(taking.holds(db) ? before : planSheet(db, sheet, at), sheet, choices);
    const counts = { ...planned.counts };
    const step = { id: randomUUID(), kind: sheet.kind, at, by: "", file, counts };
    takeImportStep(db, step, planned.taking.touches, () => planned.taking.write(db, at));
    rememberMapping(db, sheet.kind, sheet.headers, sheet.mapping);
    return planned;
  });
}

/**
 * Holds a sheet until it is said who is who; where nobody can be asked, the rows that wait stay outside.
 * @throws Refusal `conflict`
 */
function answered(planned: PlannedSheet, sheet: ReadSheet, { unanswered }: SheetChoices): PlannedSheet {
  const { questions } = planned;
  if (questions.length === 0) return planned;
  if (unanswered === "ask") {
    throw new Refusal("conflict", sentence("sheets.whoIsWho", { count: questions.length }));
  }
  const waiting = questions.flatMap(({ lines, ...ask }) =>
    lines.map((line) => keptBack(line, new RowAsked(ask))),
  );
  const all = keptBackCells([...planned.keptBack, ...waiting], sheet);
  return { ...planned, questions: [], keptBack: all, counts: { ...planned.counts, keptBack: all.length } };
}

/** @throws Refusal `bad-input` when the sheet lacks a column that every row needs. */
export function refuseMissing({ matched: { missing } }: Pick<ReadSheet, "matched">): void {
  const [first] = missing;
  if (first !== undefined) throw new Refusal("bad-input", sentence(`sheets.missing.${first}`));
}

/** Returns the original columns, without the two that an earlier sheet of rows not imported had added. */
export function ownColumns(headers: readonly string[]): number[] {
  return headers.flatMap((header, index) => (isAddedHeader(header) ? [] : [index]));
}
