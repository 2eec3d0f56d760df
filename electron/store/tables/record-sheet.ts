import type { Mark } from "../../domain/tests/protocol.ts";
import { rulesVersion, type TestCode } from "../../domain/tests/registry.ts";
import { execute, firstRow, type WritableDb } from "../connection/database.ts";
import { noteMadeAnew } from "./marks.ts";

/** An attempt of a sheet, about which its plan knows all: that its id is new, that its slot has room, what it scores. */
export interface AttemptOfSheet {
  readonly id: string;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly slot: string;
  /** JSON of what was seen, parsed by the test's own attempt schema. */
  readonly seen: string;
  readonly enteredBy: string;
  readonly note: string;
  readonly performed: string | null;
}

/** A mark that attempts of a sheet change, once for all of them. */
export interface MarkOfSheet {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
  readonly mark: Mark;
  /** Which attempt of the sheet is the newest behind it, from 0. */
  readonly newest: number;
  /** How it was made; of those who had attempts before, all marks are looked at again instead. */
  readonly position: number | null;
  readonly restMinutes: number | null;
}

/** What a sheet of results adds to a day. */
export interface SheetOfAttempts {
  readonly dayId: number;
  /** ISO 8601 instant. */
  readonly at: string;
  /** Texts by {@link writeAttempt}, in the order of entry, and by {@link writeMark}. */
  readonly attempts: readonly string[];
  readonly marks: readonly string[];
  /** Those who had attempts on that day before. */
  readonly known: readonly number[];
}

/** Writes an attempt as {@link recordSheet} takes it, so that it can be done before the transaction. */
export function writeAttempt(attempt: AttemptOfSheet): string {
  const { id, athleteId, test, variant, slot, seen, enteredBy, note, performed } = attempt;
  return JSON.stringify([id, athleteId, test, variant, slot, seen, enteredBy, note, performed]);
}

export function writeMark({ mark, ...place }: MarkOfSheet): string {
  const { athleteId, test, variant, fingerprint, newest, position, restMinutes } = place;
  const value = mark.state === "complete" ? mark.value : null;
  const scored = [mark.state, value, JSON.stringify(mark)];
  return JSON.stringify([athleteId, test, variant, fingerprint, ...scored, newest, position, restMinutes]);
}

const parts = (count: number) => Array.from({ length: count }, (_, at) => `value ->> ${at}`).join(", ");

const attemptsSql = `INSERT INTO attempt
  (id, athlete_id, test, variant, slot, seen, entered_by, note, performed, seq, day_id, at, source)
  SELECT ${parts(9)}, @first + key, @dayId, @at, 'sheet' FROM json_each(@rows)`;

const marksSql = `INSERT INTO mark (athlete_id, test, variant, fingerprint, state, value, detail, seq, position, rest_minutes,
    day_id, rules)
  SELECT ${parts(7)}, @first + (value ->> 7), value ->> 8, value ->> 9, @dayId, @rules FROM json_each(@rows) WHERE true
  ON CONFLICT DO UPDATE SET fingerprint = excluded.fingerprint, state = excluded.state, value = excluded.value,
    detail = excluded.detail, seq = excluded.seq, rules = excluded.rules`;

/**
 * Adds all attempts of a sheet with the marks that they come to: what `recordAttempt` leaves one by one, in a statement
 * each, since nothing else is written meanwhile. Nothing is asked that the plan knows: it has to be of this transaction
 * or proved to hold in it. Part of the caller's transaction.
 */
export function recordSheet(db: WritableDb, { dayId, at, attempts, marks, known }: SheetOfAttempts): void {
  if (attempts.length === 0) return;
  const first = newestSeq(db) + 1;
  execute(db, attemptsSql, { rows: asList(attempts), first, dayId, at });
  execute(db, marksSql, { rows: asList(marks), first, dayId, rules: rulesVersion });
  for (const athleteId of known) noteMadeAnew(db, dayId, athleteId);
}

const asList = (texts: readonly string[]) => `[${texts.join(",")}]`;

/** The newest place in the order of entry that was ever given. */
function newestSeq(db: WritableDb): number {
  const sql = "SELECT seq FROM sqlite_sequence WHERE name = 'attempt'";
  return firstRow<{ seq: number }>(db, sql)?.seq ?? 0;
}
