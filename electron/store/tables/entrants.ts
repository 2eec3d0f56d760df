import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** Whether somebody takes part in a day. Only the outcome of the readiness questions is here, never an answer. */
export const entrantStates = ["expected", "testing", "not-testing", "no-show", "withdrawn"] as const;
export type EntrantState = (typeof entrantStates)[number];

export interface Entrant {
  readonly athleteId: number;
  readonly state: EntrantState;
  readonly bib: number | null;
  /** When the state was reached (ISO 8601 instant). */
  readonly since: string;
}

/** A test that somebody leaves out: `readiness` (no reason is kept) or `skip` (with a reason). */
export interface LeftOut {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly kind: "readiness" | "skip";
  readonly reason: string;
  readonly decidedBy: string;
  readonly at: string;
}

const columns = "athlete_id AS athleteId, state, bib, since";

export function entrants(db: ReadableDb, dayId: number): Entrant[] {
  return allRows(db, `SELECT ${columns} FROM entrant WHERE day_id = @dayId ORDER BY bib, athlete_id`, {
    dayId,
  });
}

/** Ids of those who are still expected, by name. */
export function expectedByName(db: ReadableDb, dayId: number): number[] {
  const sql = `SELECT athlete.id AS id FROM entrant JOIN athlete ON athlete.id = entrant.athlete_id
    WHERE day_id = @dayId AND state = 'expected' ORDER BY athlete.folded, athlete.id`;
  return allRows<{ id: number }>(db, sql, { dayId }).map(({ id }) => id);
}

export function entrantOf(db: ReadableDb, dayId: number, athleteId: number): Entrant | undefined {
  const sql = `SELECT ${columns} FROM entrant WHERE day_id = @dayId AND athlete_id = @athleteId`;
  return firstRow(db, sql, { dayId, athleteId });
}

export function entrantByBib(db: ReadableDb, dayId: number, bib: number): Entrant | undefined {
  return firstRow(db, `SELECT ${columns} FROM entrant WHERE day_id = @dayId AND bib = @bib`, { dayId, bib });
}

/** Puts an athlete on the day's list when not there yet; a known entrant stays as it is. */
export function expectEntrant(db: WritableDb, dayId: number, athleteId: number, at: string): boolean {
  const sql = `INSERT INTO entrant (day_id, athlete_id, state, since) VALUES (@dayId, @athleteId, 'expected', @at)
    ON CONFLICT DO NOTHING`;
  return execute(db, sql, { dayId, athleteId, at }).changes === 1;
}

export function setEntrant(db: WritableDb, dayId: number, entrant: Entrant): void {
  const sql = `INSERT INTO entrant (day_id, athlete_id, state, bib, since)
    VALUES (@dayId, @athleteId, @state, @bib, @since)
    ON CONFLICT (day_id, athlete_id) DO UPDATE SET state = excluded.state, bib = excluded.bib, since = excluded.since`;
  execute(db, sql, { ...entrant, dayId });
}

/** The smallest bib from 1 that nobody has. */
export function nextFreeBib(db: ReadableDb, dayId: number): number {
  const sql = `SELECT min(candidate) AS bib FROM (
      SELECT 1 AS candidate
      UNION ALL SELECT bib + 1 FROM entrant WHERE day_id = @dayId AND bib IS NOT NULL)
    WHERE NOT EXISTS (SELECT 1 FROM entrant WHERE day_id = @dayId AND bib = candidate)`;
  return firstRow<{ bib: number }>(db, sql, { dayId })?.bib ?? 1;
}

export function leftOut(db: ReadableDb, dayId: number): LeftOut[] {
  const sql = `SELECT athlete_id AS athleteId, test, kind, reason, decided_by AS decidedBy, at
    FROM left_out WHERE day_id = @dayId`;
  return allRows(db, sql, { dayId });
}

/** Leaves a test out; deciding the same again changes nothing. */
export function leaveOut(db: WritableDb, dayId: number, decision: LeftOut): void {
  const sql = `INSERT INTO left_out (day_id, athlete_id, test, kind, reason, decided_by, at)
    VALUES (@dayId, @athleteId, @test, @kind, @reason, @decidedBy, @at) ON CONFLICT DO NOTHING`;
  execute(db, sql, { ...decision, dayId });
}

/** Takes back that a test is left out. */
export function takeBackIn(db: WritableDb, dayId: number, athleteId: number, test: TestCode): void {
  const sql = "DELETE FROM left_out WHERE day_id = @dayId AND athlete_id = @athleteId AND test = @test";
  execute(db, sql, { dayId, athleteId, test });
}

/** The tests that one athlete leaves out, whatever the reason, in no order. */
export function leftOutOf(db: ReadableDb, dayId: number, athleteId: number): TestCode[] {
  const sql = "SELECT test FROM left_out WHERE day_id = @dayId AND athlete_id = @athleteId";
  return allRows<{ test: TestCode }>(db, sql, { dayId, athleteId }).map(({ test }) => test);
}

/** Replaces what the readiness questions came to for one athlete; tests skipped with a reason stay skipped. */
export function setReadiness(
  db: WritableDb,
  dayId: number,
  athleteId: number,
  decision: { readonly tests: readonly TestCode[]; readonly decidedBy: string; readonly at: string },
): void {
  const { tests, decidedBy, at } = decision;
  const sql = "DELETE FROM left_out WHERE day_id = @dayId AND athlete_id = @athleteId AND kind = 'readiness'";
  execute(db, sql, { dayId, athleteId });
  for (const test of tests) {
    leaveOut(db, dayId, { athleteId, test, kind: "readiness", reason: "", decidedBy, at });
  }
}

/** How many of a list are in each state. */
export function countStates(list: readonly { readonly state: EntrantState }[]): Record<EntrantState, number> {
  const counts = { expected: 0, testing: 0, "not-testing": 0, "no-show": 0, withdrawn: 0 };
  for (const { state } of list) counts[state] += 1;
  return counts;
}
