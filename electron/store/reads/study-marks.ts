import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/**
 * Returns the complete marks of a day in one test and variant, with the athlete's id and the value in grains, for a study
 * that compares them. The best of fewer trials than the rules allow is left out: it is lower by chance.
 */
export function marksForStudy(
  db: ReadableDb,
  which: { readonly dayId: number; readonly test: TestCode; readonly variant: string },
): { athleteId: number; value: number }[] {
  const sql = `SELECT athlete_id AS athleteId, value FROM mark
    WHERE day_id = @dayId AND test = @test AND variant = @variant AND state = 'complete'
      AND detail ->> '$.trials' IS NULL ORDER BY athlete_id`;
  return allRows(db, sql, { ...which });
}
