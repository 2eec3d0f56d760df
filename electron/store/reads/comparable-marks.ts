import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/** What one athlete brings to a reference group: one mark, in the test's grains. */
export interface ComparableMark {
  readonly athleteId: number;
  readonly value: number;
}

/** The complete marks of one day and one fingerprint. */
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
): ComparableMark[] {
  const rows = allRows<ComparableMark>(db, latestSql, which);
  return rows.map(({ athleteId, value }) => ({ athleteId, value }));
}
