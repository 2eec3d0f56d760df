import type { Cells, RowRefused } from "../../domain/tests/cells.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ColumnName } from "../../sheets/headers.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import type { SheetAnswers } from "./choices.ts";
import { type Question, RowAsked } from "./questions.ts";

/** When a sheet is planned (ISO 8601 instant), and what people said of who is who. */
export interface Planning {
  readonly at: string;
  readonly answers: SheetAnswers;
}

/** A row that was read. */
export interface ReadRow<Row> {
  readonly line: number;
  readonly row: Row;
}

/** A row to import: its status, and the step that imports it (none if it is known already). */
export interface TakenRow {
  readonly line: number;
  readonly status: "new" | "changed" | "known";
  /** The row's athlete, where the sheet only gives a bib, number or name. */
  readonly about: { readonly name: string; readonly league: string } | null;
  /** A reason for a second look; the row is imported anyway. */
  readonly unusual: Sentence | null;
  /** Earlier values by field, where the row changes them. */
  readonly was: Readonly<Partial<Record<ColumnName, string>>>;
  /** True for a known athlete who is not on the day's list yet, and is added to it. */
  readonly joins: boolean;
  readonly apply: ((db: WritableDb) => void) | null;
}

/** Why a row is not imported, with the field to look at (null: the row as a whole). */
export interface Reason {
  readonly field: ColumnName | null;
  readonly reason: Sentence;
}

/** A row that is not imported, and what else is wrong with it. */
export interface KeptBackRow extends Reason {
  readonly line: number;
  readonly also?: readonly Reason[];
  /** What people have to say first: it is no fault of the row. */
  readonly ask?: Question;
}

export type RowOutcome = TakenRow | KeptBackRow;

/** With the cells that it came of, by field. */
export type PlannedOutcome = RowOutcome & { readonly cells: Cells };

export function isTaken<Outcome extends RowOutcome>(outcome: Outcome): outcome is Extract<Outcome, TakenRow> {
  return "status" in outcome;
}

export function keptBack(line: number, refused: RowRefused): KeptBackRow {
  const also = refused.also.map(({ field, sentence }) => ({ field, reason: sentence }));
  const ask = refused instanceof RowAsked ? { ask: refused.question } : {};
  return { line, field: refused.field, reason: refused.sentence, also, ...ask };
}

/** Returns the outcome of a row that is known word for word. */
export function known(line: number, about: TakenRow["about"]): TakenRow {
  return { line, status: "known", about, unusual: null, was: {}, joins: false, apply: null };
}
