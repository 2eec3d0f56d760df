import type { TestCode } from "../../domain/tests/registry.ts";
import { execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** A mark from before this program, or from elsewhere; `value` in the test's grains. */
export interface PastMark {
  readonly athleteId: number;
  readonly fingerprint: string;
  readonly date: string;
  readonly test: TestCode;
  readonly variant: string;
  readonly value: number;
}

/** Returns the stored value for the same athlete, fingerprint and date; undefined if there is none. */
export function pastMarkValue(db: ReadableDb, mark: Omit<PastMark, "value">): number | undefined {
  const sql = `SELECT value FROM past_mark
    WHERE athlete_id = @athleteId AND fingerprint = @fingerprint AND date = @date`;
  return firstRow<{ value: number }>(db, sql, { ...mark })?.value;
}

export function addPastMark(db: WritableDb, mark: PastMark): void {
  const sql = `INSERT INTO past_mark (athlete_id, fingerprint, date, test, variant, value)
    VALUES (@athleteId, @fingerprint, @date, @test, @variant, @value)`;
  execute(db, sql, { ...mark });
}
