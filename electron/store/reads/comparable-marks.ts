import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/** One athlete's mark in a reference group, in the test's grains. */
export interface ComparableMark {
  readonly athleteId: number;
  readonly value: number;
}

/** Returns the complete marks of one day and one fingerprint. */
export function marksToCompare(
  db: ReadableDb,
  dayId: number,
  test: TestCode,
  fingerprint: string,
): ComparableMark[] {
  const sql = `SELECT athlete_id AS athleteId, value FROM mark
    WHERE day_id = @dayId AND test = @test AND fingerprint = @fingerprint AND state = 'complete'`;
  return allRows(db, sql, { dayId, test, fingerprint });
}

/** SQLite takes the other columns from the row that has the max(). */
const latestSql = `
  SELECT athlete_id AS athleteId, value, max(day.date || printf(' %010d', day.id)) AS place
  FROM day CROSS JOIN mark ON mark.day_id = day.id
  WHERE mark.test = @test AND fingerprint = @fingerprint AND mark.state = 'complete' AND day.date <= @date
  GROUP BY athlete_id`;

/** Returns each athlete's latest complete mark of a fingerprint, from days up to and including a date (ISO 8601). */
export function latestMarks(
  db: ReadableDb,
  which: { readonly test: TestCode; readonly fingerprint: string; readonly date: string },
): ComparableMark[] {
  const rows = allRows<ComparableMark>(db, latestSql, which);
  return rows.map(({ athleteId, value }) => ({ athleteId, value }));
}
