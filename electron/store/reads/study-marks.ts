import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, type ReadableDb } from "../connection/database.ts";

/**
 * Returns the complete marks of a day in one test and variant, with the athlete's id and the value in grains, for a study
 * that compares them. The best of fewer trials than the rules allow is left out: it is lower by chance.
 * @param which with a judge's initials, only marks whose attempts that judge alone entered; with none, everybody's
 */
export function marksForStudy(
  db: ReadableDb,
  which: {
    readonly dayId: number;
    readonly test: TestCode;
    readonly variant: string;
    readonly judge: string;
  },
): { athleteId: number; value: number }[] {
  const sql = `SELECT athlete_id AS athleteId, value FROM mark
    WHERE day_id = @dayId AND test = @test AND variant = @variant AND state = 'complete'
      AND detail ->> '$.trials' IS NULL AND (@judge = '' OR NOT EXISTS (${standing} AND entered_by <> @judge))
    ORDER BY athlete_id`;
  return allRows(db, sql, { ...which });
}

/** The attempts behind a mark. */
const standing = `SELECT 1 FROM attempt LEFT JOIN void ON void.attempt_id = attempt.id
  WHERE void.attempt_id IS NULL AND attempt.day_id = mark.day_id AND attempt.athlete_id = mark.athlete_id
    AND attempt.test = mark.test AND attempt.variant = mark.variant`;

/** Returns who entered attempts of a day in one test and variant that count, by initials. */
export function whoEntered(
  db: ReadableDb,
  which: { readonly dayId: number; readonly test: TestCode; readonly variant: string },
): string[] {
  const sql = `SELECT DISTINCT entered_by AS judge FROM attempt LEFT JOIN void ON void.attempt_id = attempt.id
    WHERE void.attempt_id IS NULL AND day_id = @dayId AND test = @test AND variant = @variant ORDER BY judge`;
  return allRows<{ judge: string }>(db, sql, { ...which }).map(({ judge }) => judge);
}
