import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** An athlete who was called to a test and did not come. */
export interface Absence {
  /** Made by the client, so that a retry is recognised. */
  readonly id: string;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly by: string;
  readonly at: string;
}

/** Returns a day's absences by time. */
export function absences(db: ReadableDb, dayId: number): Absence[] {
  const sql = `SELECT id, athlete_id AS athleteId, test, noted_by AS by, at
    FROM absence WHERE day_id = @dayId ORDER BY at, id`;
  return allRows(db, sql, { dayId });
}

/** Adds an absence; returns false when its id was known. */
export function addAbsence(db: WritableDb, dayId: number, absence: Absence): boolean {
  const sql = `INSERT INTO absence (id, day_id, athlete_id, test, noted_by, at)
    VALUES (@id, @dayId, @athleteId, @test, @by, @at) ON CONFLICT DO NOTHING`;
  return execute(db, sql, { ...absence, dayId }).changes === 1;
}
