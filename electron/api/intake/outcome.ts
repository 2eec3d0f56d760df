import type { Cells, RowRefused } from "../../domain/tests/cells.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ColumnName } from "../../sheets/headers.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { changesOf } from "../../store/connection/until-write.ts";
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

/** A row to import, or one that is known already. */
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
}

/** A row that is imported on its own; the ids are of those who were there before and of whom it changes something. */
export interface AppliedRow extends TakenRow {
  readonly apply: ((db: WritableDb) => void) | null;
  readonly touches: readonly number[];
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

/** How the good rows of a planned sheet are imported. */
export interface Taking {
  /** Whether the same plan would be made now. */
  holds(db: ReadableDb): boolean;
  /** Those who were there before and of whom it changes something, but for their attempts. */
  readonly touches: readonly number[];
  /** Imports all of them (`at`: ISO 8601 instant). Part of the caller's transaction, in which the plan holds. */
  write(db: WritableDb, at: string): void;
}

/** What a sheet comes to: each row, in their order, and how the good ones are imported. */
export interface Planned<Outcome extends RowOutcome = RowOutcome> {
  readonly outcomes: Outcome[];
  readonly taking: Taking;
}

/** Plans a sheet in turns, between which the caller may do something else; `when`: as people said it. */
export type Planner<Row> = (
  db: ReadableDb,
  rows: readonly ReadRow<Row>[],
  when: Planning,
) => Generator<undefined, Planned>;

/** What rows that are imported one by one come to. */
export interface RowByRow {
  readonly outcomes: (AppliedRow | KeptBackRow)[];
  /** Writes what the rows left to be written together, when each has been imported. */
  last?(db: WritableDb): void;
}

/** A planner in one turn, whose rows are imported one by one; its plan holds while nothing at all changes. */
export function rowByRow<Row>(
  plan: (db: ReadableDb, rows: readonly ReadRow<Row>[], when: Planning) => RowByRow,
): Planner<Row> {
  return function* (db, rows, when) {
    const changes = changesOf(db);
    const { outcomes, last } = plan(db, rows, when);
    const taken = outcomes.filter((outcome) => isTaken(outcome));
    const taking: Taking = {
      holds: (now) => now === db && changesOf(now) === changes,
      touches: [...new Set(taken.flatMap(({ touches }) => touches))],
      write(inside) {
        for (const { apply } of taken) apply?.(inside);
        last?.(inside);
      },
    };
    return { outcomes, taking };
  };
}

export function isTaken<Outcome extends RowOutcome>(outcome: Outcome): outcome is Extract<Outcome, TakenRow> {
  return "status" in outcome;
}

export function keptBack(line: number, refused: RowRefused): KeptBackRow {
  const also = refused.also.map(({ field, sentence }) => ({ field, reason: sentence }));
  const ask = refused instanceof RowAsked ? { ask: refused.question } : {};
  return { line, field: refused.field, reason: refused.sentence, also, ...ask };
}

/** Returns the outcome of a row that is known word for word. */
export function known(line: number, about: TakenRow["about"]): AppliedRow {
  return { line, status: "known", about, unusual: null, was: {}, joins: false, apply: null, touches: [] };
}
