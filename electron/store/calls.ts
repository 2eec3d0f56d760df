import type { TestCode } from "../domain/tests/registry.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";

/** Somebody is called to a station. */
export interface Call {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly at: string;
}

export function calls(db: ReadableDb, dayId: number): Call[] {
  const sql = "SELECT athlete_id AS athleteId, test, at FROM call WHERE day_id = ? ORDER BY at, athlete_id";
  return statement<[number], Call>(db, sql).all(dayId);
}

/** Calls an athlete; a call to another station takes its place. */
export function setCall(db: WritableDb, dayId: number, call: Call): void {
  const sql = `INSERT INTO call (day_id, athlete_id, test, at) VALUES (?, ?, ?, ?)
    ON CONFLICT DO UPDATE SET test = excluded.test, at = excluded.at`;
  statement<[number, number, string, string]>(db, sql).run(dayId, call.athleteId, call.test, call.at);
}

/** Ends an athlete's call to this test; one to another stays. */
export function endCallTo(db: WritableDb, dayId: number, athleteId: number, test: TestCode): void {
  const sql = "DELETE FROM call WHERE day_id = ? AND athlete_id = ? AND test = ?";
  statement<[number, number, string]>(db, sql).run(dayId, athleteId, test);
}

/** Ends whatever call an athlete has. */
export function endCall(db: WritableDb, dayId: number, athleteId: number): void {
  statement<[number, number]>(db, "DELETE FROM call WHERE day_id = ? AND athlete_id = ?").run(
    dayId,
    athleteId,
  );
}
