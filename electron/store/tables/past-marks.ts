import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** A mark from before this program, or from elsewhere; `value` in the test's grains. */
export interface PastMark {
  readonly athleteId: number;
  readonly fingerprint: string;
  readonly date: string;
  readonly test: TestCode;
  readonly variant: string;
  readonly value: number;
}

/** Returns the stored value for the same athlete, fingerprint and date; undefined if there is none. */
export function pastMarkValue(db: ReadableDb, mark: Omit<PastMark, "value">): number | undefined {
  const sql = `SELECT value FROM past_mark
    WHERE athlete_id = @athleteId AND fingerprint = @fingerprint AND date = @date`;
  return firstRow<{ value: number }>(db, sql, { ...mark })?.value;
}

export function addPastMark(db: WritableDb, mark: PastMark): void {
  const sql = `INSERT INTO past_mark (athlete_id, fingerprint, date, test, variant, value)
    VALUES (@athleteId, @fingerprint, @date, @test, @variant, @value)`;
  execute(db, sql, { ...mark });
}

/** A past mark that no longer counts: who removed it, when and why, and what took its place (null: nothing). */
export interface PastVoid extends PastMark {
  readonly id: string;
  readonly instead: number | null;
  readonly reason: string;
  readonly by: string;
  readonly at: string;
}

const columns = "athlete_id AS athleteId, fingerprint, date, test, variant, value";

/** Those of one athlete that stand, newest first. */
export function pastMarksOf(db: ReadableDb, athleteId: number): PastMark[] {
  const sql = `SELECT ${columns} FROM past_mark WHERE athlete_id = @athleteId ORDER BY date DESC, test, variant`;
  return allRows(db, sql, { athleteId });
}

/** Those of one athlete that were removed or corrected, the newest step first. */
export function pastVoidsOf(db: ReadableDb, athleteId: number): PastVoid[] {
  const sql = `SELECT ${columns}, id, instead, reason, voided_by AS by, at FROM past_void
    WHERE athlete_id = @athleteId ORDER BY at DESC, id`;
  return allRows(db, sql, { athleteId });
}

/** Returns true if the step with this id was taken. */
export function hasPastVoid(db: ReadableDb, id: string): boolean {
  return firstRow(db, "SELECT id FROM past_void WHERE id = @id", { id }) !== undefined;
}

export function addPastVoid(db: WritableDb, line: PastVoid): void {
  const sql = `INSERT INTO past_void
    (id, athlete_id, fingerprint, date, test, variant, value, instead, reason, voided_by, at)
    VALUES (@id, @athleteId, @fingerprint, @date, @test, @variant, @value, @instead, @reason, @by, @at)`;
  execute(db, sql, { ...line });
}

/** Takes a past mark away whose void line was added; the store refuses it without. */
export function removePastMark(db: WritableDb, mark: Omit<PastMark, "value">): void {
  const sql = `DELETE FROM past_mark
    WHERE athlete_id = @athleteId AND fingerprint = @fingerprint AND date = @date`;
  const { athleteId, fingerprint, date } = mark;
  execute(db, sql, { athleteId, fingerprint, date });
}
