import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/** The complete marks of one test and variant on the newest day that has any. */
export interface NewestMarks {
  readonly date: string;
  readonly variant: string;
  /** In grains. */
  readonly values: readonly number[];
}

const sql = `
  WITH newest AS (
    SELECT day.id, day.date FROM day JOIN mark ON mark.day_id = day.id
    WHERE mark.test = @test AND mark.state = 'complete' ORDER BY day.date DESC, day.id DESC LIMIT 1)
  SELECT newest.date, mark.variant, mark.value FROM newest JOIN mark ON mark.day_id = newest.id
  WHERE mark.test = @test AND mark.state = 'complete'`;

/** Returns the marks of the variant that most athletes did; undefined when no day has a complete mark. */
export function newestMarks(db: ReadableDb, test: TestCode): NewestMarks | undefined {
  type Row = { date: string; variant: string; value: number };
  const rows = allRows<Row>(db, sql, { test });
  const [most] = [...Map.groupBy(rows, ({ variant }) => variant)].sort(([, a], [, b]) => b.length - a.length);
  if (most === undefined) return undefined;
  const [variant, chosen] = most;
  return { date: chosen[0]?.date ?? "", variant, values: chosen.map(({ value }) => value) };
}
