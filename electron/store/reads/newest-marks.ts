import { isUnfinished, rankOf } from "../../domain/marks/rank.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/** The marks of one test and variant on the newest day that has any. */
export interface NewestMarks {
  readonly date: string;
  readonly variant: string;
  /** Of those who finished, in grains. */
  readonly values: readonly number[];
  /** Of everybody, who stopped as worst (`rankOf`). */
  readonly ranks: readonly number[];
}

const sql = `
  WITH newest AS (
    SELECT day.id, day.date FROM day
    WHERE EXISTS (SELECT 1 FROM mark WHERE mark.day_id = day.id AND mark.test = @test AND mark.state = 'complete')
    ORDER BY day.date DESC, day.id DESC LIMIT 1)
  SELECT newest.date, mark.variant, mark.detail FROM newest JOIN mark ON mark.day_id = newest.id
  WHERE mark.test = @test AND mark.state <> 'incomplete'`;

/** Returns the marks of the variant that most athletes did; undefined when no day has a complete mark. */
export function newestMarks(db: ReadableDb, test: TestCode): NewestMarks | undefined {
  type Row = { date: string; variant: string; detail: string };
  const rows = allRows<Row>(db, sql, { test });
  const [most] = [...Map.groupBy(rows, ({ variant }) => variant)].sort(([, a], [, b]) => b.length - a.length);
  if (most === undefined) return undefined;
  const [variant, chosen] = most;
  const ranks = chosen.flatMap(({ detail }) => rankOf(JSON.parse(detail) as Mark) ?? []);
  const values = ranks.filter((rank) => !isUnfinished(rank));
  return { date: chosen[0]?.date ?? "", variant, values, ranks };
}
