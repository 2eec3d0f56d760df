import type { TestCode } from "../domain/tests/registry.ts";
import { type ReadableDb, statement } from "./database.ts";

/** What one athlete brings to a reference group: one mark, in the test's grains. */
export interface ReferenceMark {
  readonly athleteId: number;
  readonly value: number;
}

/** The complete marks of one day and one fingerprint. */
export function marksToCompare(
  db: ReadableDb,
  dayId: number,
  test: TestCode,
  fingerprint: string,
): ReferenceMark[] {
  const sql = `SELECT athlete_id AS athleteId, value FROM mark
    WHERE day_id = ? AND test = ? AND fingerprint = ? AND state = 'complete'`;
  return statement<[number, string, string], ReferenceMark>(db, sql).all(dayId, test, fingerprint);
}

/** Beside max(), the other columns are those of its row: SQLite says so. */
const latestSql = `
  SELECT athlete_id AS athleteId, value, max(day.date || printf(' %010d', day.id)) AS place
  FROM day CROSS JOIN mark ON mark.day_id = day.id
  WHERE mark.test = @test AND fingerprint = @fingerprint AND mark.state = 'complete' AND day.date <= @date
  GROUP BY athlete_id`;

/** Each athlete's latest complete mark of a fingerprint from the days up to a date (ISO 8601), that day included. */
export function latestMarks(
  db: ReadableDb,
  which: { readonly test: TestCode; readonly fingerprint: string; readonly date: string },
): ReferenceMark[] {
  const query = statement<[typeof which], ReferenceMark>(db, latestSql);
  return query.all(which).map(({ athleteId, value }) => ({ athleteId, value }));
}
