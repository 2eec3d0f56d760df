import type { RowRefused } from "../../domain/tests/cells.ts";
import type { Sentence } from "../../domain/words.ts";
import type { ColumnName } from "../../sheets/headers.ts";
import type { WritableDb } from "../../store/connection/database.ts";

/** A row that could be read. */
export interface ReadRow<Row> {
  readonly line: number;
  readonly row: Row;
}

/** A row that is taken: what it would change, and the step that does it (none where it is known already). */
export interface TakenRow {
  readonly line: number;
  readonly status: "new" | "changed" | "known";
  /** Who the row turned out to be about, where the sheet only points (by bib, number or name). */
  readonly about: { readonly name: string; readonly league: string } | null;
  /** Worth a second look: taken all the same. */
  readonly unusual: Sentence | null;
  /** What stood there before, by field, where the row changes it. */
  readonly was: Readonly<Partial<Record<ColumnName, string>>>;
  /** Known, but not on the day's list yet: it goes there. */
  readonly joins: boolean;
  readonly apply: ((db: WritableDb) => void) | null;
}

/** A row that stays outside, with the field to look at (null: the row as a whole). */
export interface KeptBackRow {
  readonly line: number;
  readonly field: ColumnName | null;
  readonly reason: Sentence;
}

export type RowOutcome = TakenRow | KeptBackRow;

export function isTaken(outcome: RowOutcome): outcome is TakenRow {
  return "status" in outcome;
}

export function keptBack(line: number, refused: RowRefused): KeptBackRow {
  return { line, field: refused.field, reason: refused.sentence };
}

/** A row that is known word for word. */
export function known(line: number, about: TakenRow["about"]): TakenRow {
  return { line, status: "known", about, unusual: null, was: {}, joins: false, apply: null };
}
