import { rankOf } from "../../domain/marks/rank.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb, type Values } from "../connection/database.ts";
import { keptApartFromDay } from "../connection/stamp.ts";
import type { Day } from "../tables/days.ts";

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
  WHERE day.id <> @dayId AND mark.test = @test AND fingerprint = @fingerprint AND mark.state <> 'incomplete'
    AND day.date <= @date
  GROUP BY athlete_id`;

/** The latest marks of other days, by athlete, each with its day's place in time. The same object until one of them changes. */
export type Latest = ReadonlyMap<number, ComparableMark & { readonly place: string }>;

/** What was read for a day and does not change with its own entries, by date, test and fingerprint. */
const latestElsewhere = keptApartFromDay((_db, _dayId) => new Map<string, Latest>());

/** The latest marks up to a day: of other days, and of those who did it on that day since. */
export interface LatestMarks {
  readonly elsewhere: Latest;
  /** Stand before those of other days. */
  readonly today: readonly ComparableMark[];
}

/** Returns each athlete's latest mark of a fingerprint with a place, from days up to and including a day's date. */
export function latestMarks(
  db: ReadableDb,
  { id: dayId, date }: Pick<Day, "id" | "date">,
  which: { readonly test: TestCode; readonly fingerprint: string },
): LatestMarks {
  const known = latestElsewhere(db, dayId);
  const key = JSON.stringify([date, which.test, which.fingerprint]);
  const elsewhere = known.get(key) ?? readLatest(db, { ...which, dayId, date });
  known.set(key, elsewhere);
  const now = `${date} ${String(dayId).padStart(10, "0")}`;
  const today = marksToCompare(db, dayId, which.test, which.fingerprint).filter(({ athleteId }) => {
    const other = elsewhere.get(athleteId);
    return other === undefined || other.place < now;
  });
  return { elsewhere, today };
}

function readLatest(db: ReadableDb, which: Values): Latest {
  const rows = allRows<MarkRow & { readonly place: string }>(db, latestSql, which);
  return new Map(
    rows.flatMap((row) => ranked(row).map((mark) => [mark.athleteId, { ...mark, place: row.place }])),
  );
}
