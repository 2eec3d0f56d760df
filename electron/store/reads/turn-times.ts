import type { TimedAttempt } from "../../domain/queue/times.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";
import { cachedUntilWrite } from "../connection/until-write.ts";

/** An attempt's time with the heat that it was made in. Instants are ISO 8601. */
export interface TurnTime extends TimedAttempt {
  readonly heatId: string | null;
  /** Time 0 of that heat by the wall clock; null without a heat. */
  readonly heatZero: string | null;
}

/** Returns the times of a day's attempts with their heats, in the order of entry; not what was seen. */
export const turnTimesOfDay: (db: ReadableDb, dayId: number) => readonly TurnTime[] =
  cachedUntilWrite(readTurnTimes);

function readTurnTimes(db: ReadableDb, dayId: number): TurnTime[] {
  const sql = `SELECT attempt.id, athlete_id AS athleteId, attempt.test, attempt.at, performed, replaces,
      void.attempt_id IS NULL AS stands, heat_id AS heatId, zero_wall AS heatZero
    FROM attempt LEFT JOIN void ON void.attempt_id = attempt.id LEFT JOIN heat ON heat.id = heat_id
    WHERE attempt.day_id = @dayId ORDER BY seq`;
  const rows = allRows<Omit<TurnTime, "stands"> & { stands: number }>(db, sql, { dayId });
  return rows.map((row) => ({ ...row, stands: row.stands === 1 }));
}
