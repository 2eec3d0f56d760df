import type { TestCode } from "../domain/tests/registry.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";

/** Somebody was called to a test and did not come. */
export interface Absence {
  /** Made by the client, so that a retry is known. */
  readonly id: string;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly by: string;
  readonly at: string;
}

/** In the order of time. */
export function absences(db: ReadableDb, dayId: number): Absence[] {
  const sql = `SELECT id, athlete_id AS athleteId, test, noted_by AS by, at
    FROM absence WHERE day_id = ? ORDER BY at, id`;
  return statement<[number], Absence>(db, sql).all(dayId);
}

/** Adds an absence; false when it was known. */
export function addAbsence(db: WritableDb, dayId: number, absence: Absence): boolean {
  const sql = `INSERT INTO absence (id, day_id, athlete_id, test, noted_by, at) VALUES (?, ?, ?, ?, ?, ?)
    ON CONFLICT DO NOTHING`;
  const add = statement<[string, number, number, string, string, string]>(db, sql);
  const { id, athleteId, test, by, at } = absence;
  return add.run(id, dayId, athleteId, test, by, at).changes === 1;
}
