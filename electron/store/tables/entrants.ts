import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import type { NewIds } from "./athletes.ts";

/** The state of an entrant on a day. The readiness questions leave only their outcome here, never an answer. */
export const entrantStates = ["expected", "testing", "not-testing", "no-show", "withdrawn"] as const;
export type EntrantState = (typeof entrantStates)[number];

export interface Entrant {
  readonly athleteId: number;
  readonly state: EntrantState;
  readonly bib: number | null;
  /** Time of reaching the state (ISO 8601 instant). */
  readonly since: string;
}

/** A test that an athlete skips: `readiness` (no reason is kept) or `skip` (with a reason). */
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

/** Returns the ids of athletes who are still expected, by name. */
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

/** Adds an athlete to the day's list; one who is on it stays unchanged. */
export function expectEntrant(db: WritableDb, dayId: number, athleteId: number, at: string): boolean {
  const sql = `INSERT INTO entrant (day_id, athlete_id, state, since) VALUES (@dayId, @athleteId, 'expected', @at)
    ON CONFLICT DO NOTHING`;
  return execute(db, sql, { dayId, athleteId, at }).changes === 1;
}

/** Adds new athletes, who are on no list yet, to the day's. */
export function expectNewEntrants(db: WritableDb, dayId: number, { first, count }: NewIds, at: string): void {
  const sql = `INSERT INTO entrant (day_id, athlete_id, state, since)
    SELECT @dayId, id, 'expected', @at FROM athlete WHERE id >= @first AND id < @first + @count`;
  execute(db, sql, { dayId, first, count, at });
}

export function setEntrant(db: WritableDb, dayId: number, entrant: Entrant): void {
  const sql = `INSERT INTO entrant (day_id, athlete_id, state, bib, since)
    VALUES (@dayId, @athleteId, @state, @bib, @since)
    ON CONFLICT (day_id, athlete_id) DO UPDATE SET state = excluded.state, bib = excluded.bib, since = excluded.since`;
  execute(db, sql, { ...entrant, dayId });
}

/** Returns the smallest free bib from 1. */
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

/** Notes that an athlete skips a test; the same again changes nothing. */
export function leaveOut(db: WritableDb, dayId: number, decision: LeftOut): void {
  const sql = `INSERT INTO left_out (day_id, athlete_id, test, kind, reason, decided_by, at)
    VALUES (@dayId, @athleteId, @test, @kind, @reason, @decidedBy, @at) ON CONFLICT DO NOTHING`;
  execute(db, sql, { ...decision, dayId });
}

/** Undoes the skipping of a test. */
export function takeBackIn(db: WritableDb, dayId: number, athleteId: number, test: TestCode): void {
  const sql = "DELETE FROM left_out WHERE day_id = @dayId AND athlete_id = @athleteId AND test = @test";
  execute(db, sql, { dayId, athleteId, test });
}

/** Returns the tests that one athlete skips for any reason, unordered. */
export function leftOutOf(
  db: ReadableDb,
  dayId: number,
  athleteId: number,
): Pick<LeftOut, "test" | "kind">[] {
  const sql = "SELECT test, kind FROM left_out WHERE day_id = @dayId AND athlete_id = @athleteId";
  return allRows(db, sql, { dayId, athleteId });
}

/** Replaces one athlete's outcome of the readiness questions; tests skipped with a reason stay skipped. */
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

/** Counts a list's entrants by state. */
export function countStates(list: readonly { readonly state: EntrantState }[]): Record<EntrantState, number> {
  const counts = { expected: 0, testing: 0, "not-testing": 0, "no-show": 0, withdrawn: 0 };
  for (const { state } of list) counts[state] += 1;
  return counts;
}
