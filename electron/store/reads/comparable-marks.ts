import { rankOf } from "../../domain/marks/rank.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/** One athlete's mark in a reference group. */
export interface ComparableMark {
  readonly athleteId: number;
  /** In the test's grains, or the rank of whoever stopped: behind all who finished (`rankOf`). */
  readonly value: number;
}

interface MarkRow {
  readonly athleteId: number;
  readonly detail: string;
}

function ranked({ athleteId, detail }: MarkRow): ComparableMark[] {
  const value = rankOf(JSON.parse(detail) as Mark);
  return value === null ? [] : [{ athleteId, value }];
}

/** Returns the marks of one day and one fingerprint that have a place among each other. */
export function marksToCompare(
  db: ReadableDb,
  dayId: number,
  test: TestCode,
  fingerprint: string,
): ComparableMark[] {
  const sql = `SELECT athlete_id AS athleteId, detail FROM mark
    WHERE day_id = @dayId AND test = @test AND fingerprint = @fingerprint AND state <> 'incomplete'`;
  return allRows<MarkRow>(db, sql, { dayId, test, fingerprint }).flatMap(ranked);
}

/** SQLite takes the other columns from the row that has the max(). */
const latestSql = `
  SELECT athlete_id AS athleteId, detail, max(day.date || printf(' %010d', day.id)) AS place
  FROM day CROSS JOIN mark ON mark.day_id = day.id
  WHERE mark.test = @test AND fingerprint = @fingerprint AND mark.state <> 'incomplete' AND day.date <= @date
  GROUP BY athlete_id`;

/** Returns each athlete's latest mark of a fingerprint with a place, from days up to and including a date (ISO 8601). */
export function latestMarks(
  db: ReadableDb,
  which: { readonly test: TestCode; readonly fingerprint: string; readonly date: string },
): ComparableMark[] {
  return allRows<MarkRow>(db, latestSql, which).flatMap(ranked);
}
