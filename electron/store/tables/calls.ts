import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";
import type { Holder } from "./heats.ts";

/** A call of an athlete to a station. */
export interface Call {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly at: string;
  /** Who called. */
  readonly holder: Holder;
}

export function calls(db: ReadableDb, dayId: number): Call[] {
  const sql = `SELECT athlete_id AS athleteId, test, at, device_id AS holder FROM call WHERE day_id = @dayId
    ORDER BY at, athlete_id`;
  return allRows(db, sql, { dayId });
}

const insert = `INSERT INTO call (day_id, athlete_id, test, at, device_id)
  VALUES (@dayId, @athleteId, @test, @at, @holder) ON CONFLICT DO UPDATE`;

/** Calls an athlete. The call replaces one to another station; one to the same station stays as it was. */
export function setCall(db: WritableDb, dayId: number, call: Call): void {
  const sql = `${insert} SET test = excluded.test, at = excluded.at, device_id = excluded.device_id
    WHERE test <> excluded.test`;
  execute(db, sql, { ...call, dayId });
}

/** Calls an athlete into a lane: a call to the same station keeps its time, and is that of the lane's holder from now on. */
export function takeCall(db: WritableDb, dayId: number, call: Call): void {
  const sql = `${insert} SET test = excluded.test, device_id = excluded.device_id,
    at = CASE WHEN test = excluded.test THEN at ELSE excluded.at END`;
  execute(db, sql, { ...call, dayId });
}

/** Ends an athlete's call to this test, but not one to another. */
export function endCallTo(db: WritableDb, dayId: number, athleteId: number, test: TestCode): void {
  const sql = "DELETE FROM call WHERE day_id = @dayId AND athlete_id = @athleteId AND test = @test";
  execute(db, sql, { dayId, athleteId, test });
}

/** Ends an athlete's call to any station. */
export function endCall(db: WritableDb, dayId: number, athleteId: number): void {
  execute(db, "DELETE FROM call WHERE day_id = @dayId AND athlete_id = @athleteId", { dayId, athleteId });
}
