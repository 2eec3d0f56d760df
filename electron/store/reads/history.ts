import type { MadeMark } from "../../domain/marks/otherwise.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";
import { howMadeColumns, withMade } from "../tables/marks.ts";

/** A complete mark of another day, or an imported past one; `value` in the test's grains. */
export interface HistoryMark {
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  readonly date: string;
  readonly value: number;
  /** 0 for an imported mark. */
  readonly dayId: number;
  /** imported: from a sheet of past results. */
  readonly source: "day" | "imported";
  readonly made: MadeMark;
}

const sql = `
  SELECT mark.test, mark.variant, mark.fingerprint, day.date AS date, mark.value, day.id AS dayId, 'day' AS source,
    ${howMadeColumns}
  FROM mark JOIN day ON day.id = mark.day_id
  WHERE mark.athlete_id = @athleteId AND mark.state = 'complete' AND mark.day_id <> @exceptDayId
  UNION ALL
  SELECT test, variant, fingerprint, date, value, 0, 'imported', NULL, NULL, NULL FROM past_mark WHERE athlete_id = @athleteId
  ORDER BY date DESC, dayId DESC, test`;

/** Returns every complete mark of an athlete, newest first, except those of one day (0: no exception). */
export function historyOf(db: ReadableDb, athleteId: number, exceptDayId: number): HistoryMark[] {
  type Row = Omit<HistoryMark, "made"> & MadeMark;
  return allRows<Row>(db, sql, { athleteId, exceptDayId }).map(withMade);
}
