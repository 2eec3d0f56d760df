import type { TimedAttempt } from "../../domain/queue/times.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";
import { cachedUntilWrite } from "../connection/until-write.ts";

/** One attempt as it was seen: never changed, never deleted. */
export interface Attempt {
  /** Made by the client, so that a retry is recognised. */
  readonly id: string;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
  readonly slot: string;
  /** Parsed by the test's own attempt schema. */
  readonly seen: unknown;
  readonly enteredBy: string;
  readonly note: string;
  /** Entered at a station, imported from a sheet, or made by a live heat. */
  readonly source: "station" | "sheet" | "heat";
  readonly at: string;
  /** When it was done (ISO 8601); null where nobody knows, as for paper without a time. */
  readonly performed: string | null;
  /** The attempt that this one corrects. */
  readonly replaces: string | null;
  /** The lane's result for which a live heat entered it (`LaneResult.key`); null if a person entered it. */
  readonly result: string | null;
  /** The heat that entered it, or that entered the same athlete's attempt which it corrects; null for none. */
  readonly heatId: string | null;
}

/** An attempt with its place in the order of entry and, if void, the reason. */
export interface KeptAttempt extends Attempt {
  readonly seq: number;
  readonly void: { readonly reason: string; readonly by: string; readonly at: string } | null;
}

interface AttemptRow extends Omit<KeptAttempt, "seen" | "void"> {
  readonly seen: string;
  readonly voidReason: string | null;
  readonly voidBy: string | null;
  readonly voidAt: string | null;
}

const columns = `seq, id, athlete_id AS athleteId, test, variant, slot, seen, entered_by AS enteredBy, note, source,
  attempt.at, performed, replaces, result, heat_id AS heatId, void.reason AS voidReason, void.voided_by AS voidBy, void.at AS voidAt`;
const source = "attempt LEFT JOIN void ON void.attempt_id = attempt.id";
/** One athlete's: left to itself SQLite goes through all of the day's attempts of a test, to have them in order. */
const sourceOfAthlete =
  "attempt INDEXED BY attempt_by_athlete LEFT JOIN void ON void.attempt_id = attempt.id";

function asAttempt(row: AttemptRow): KeptAttempt {
  const { seen, voidReason, voidBy, voidAt, ...rest } = row;
  const ended = voidReason === null ? null : { reason: voidReason, by: voidBy ?? "", at: voidAt ?? "" };
  return { ...rest, seen: JSON.parse(seen) as unknown, void: ended };
}

export function attemptById(db: ReadableDb, id: string): (KeptAttempt & { dayId: number }) | undefined {
  const sql = `SELECT day_id AS dayId, ${columns} FROM ${source} WHERE id = @id`;
  const row = firstRow<AttemptRow & { dayId: number }>(db, sql, { id });
  return row === undefined ? undefined : { ...asAttempt(row), dayId: row.dayId };
}

/** Returns the day of an attempt, standing or void; undefined for one that was never entered. */
export function dayIdOfAttempt(db: ReadableDb, id: string): number | undefined {
  const sql = "SELECT day_id AS dayId FROM attempt WHERE id = @id";
  return firstRow<{ dayId: number }>(db, sql, { id })?.dayId;
}

/** Returns every attempt of an athlete on a day, standing or void, in the order of entry. */
export function attemptsOfAthlete(db: ReadableDb, dayId: number, athleteId: number): KeptAttempt[] {
  const sql = `SELECT ${columns} FROM ${sourceOfAthlete} WHERE athlete_id = @athleteId AND day_id = @dayId ORDER BY seq`;
  return allRows<AttemptRow>(db, sql, { dayId, athleteId }).map(asAttempt);
}

/** Returns every attempt of a day, standing or void, in the order of entry. */
export function attemptsOfDay(db: ReadableDb, dayId: number): KeptAttempt[] {
  const sql = `SELECT ${columns} FROM ${source} WHERE day_id = @dayId ORDER BY seq`;
  return allRows<AttemptRow>(db, sql, { dayId }).map(asAttempt);
}

/** Returns whose the standing attempts of a day are that live heats entered, in the order of entry; not what was seen. */
export function liveAttempts(
  db: ReadableDb,
  dayId: number,
): Pick<Attempt, "id" | "athleteId" | "test" | "variant">[] {
  const sql = `SELECT id, athlete_id AS athleteId, test, variant FROM ${source}
    WHERE day_id = @dayId AND source = 'heat' AND void.attempt_id IS NULL ORDER BY seq`;
  return allRows(db, sql, { dayId });
}

/** Returns the newest attempts of one test, newest first. */
export function newestAttempts(db: ReadableDb, dayId: number, test: TestCode, count: number): KeptAttempt[] {
  const sql = `SELECT ${columns} FROM ${source} WHERE day_id = @dayId AND test = @test ORDER BY seq DESC LIMIT @count`;
  return allRows<AttemptRow>(db, sql, { dayId, test, count }).map(asAttempt);
}

/**
 * Returns the entry time of each attempt of a day, in the order of entry, for queues; not what was seen. Read once for all
 * who ask between two changes.
 */
export const attemptTimes: (db: ReadableDb, dayId: number) => readonly TimedAttempt[] =
  cachedUntilWrite(readTimes);

function readTimes(db: ReadableDb, dayId: number): TimedAttempt[] {
  const sql = `SELECT id, athlete_id AS athleteId, test, attempt.at, performed, replaces, void.attempt_id IS NULL AS stands
    FROM ${source} WHERE day_id = @dayId ORDER BY seq`;
  const rows = allRows<Omit<TimedAttempt, "stands"> & { stands: number }>(db, sql, { dayId });
  return rows.map((row) => ({ ...row, stands: row.stands === 1 }));
}

/** An attempt's time with what its mark is made of. */
export interface ScoredAttempt extends TimedAttempt, Pick<Attempt, "variant"> {
  readonly seq: number;
  /** JSON of the test's own attempt schema. */
  readonly seen: string;
}

const scoredSql = `SELECT id, seq, athlete_id AS athleteId, test, variant, seen, attempt.at, performed, replaces,
    void.attempt_id IS NULL AS stands
  FROM ${sourceOfAthlete} WHERE athlete_id = @athleteId AND day_id = @dayId`;

/** Returns all of one athlete's day that marks are made of, in the order of entry. */
export function scoredAttempts(db: ReadableDb, dayId: number, athleteId: number): ScoredAttempt[] {
  const rows = allRows<Omit<ScoredAttempt, "stands"> & { stands: number }>(db, scoredSql, {
    dayId,
    athleteId,
  });
  return rows.map((row) => ({ ...row, stands: row.stands === 1 })).sort((a, b) => a.seq - b.seq);
}

/** Returns an attempt with all that it corrects and all that correct it, in the order of entry. */
export function chainOf(db: ReadableDb, id: string): KeptAttempt[] {
  const sql = `WITH RECURSIVE chain (id) AS (
      SELECT @id
      UNION SELECT attempt.replaces FROM chain JOIN attempt ON attempt.id = chain.id WHERE replaces IS NOT NULL
      UNION SELECT attempt.id FROM chain JOIN attempt ON attempt.replaces = chain.id)
    SELECT ${columns} FROM ${source} WHERE id IN chain ORDER BY seq`;
  return allRows<AttemptRow>(db, sql, { id }).map(asAttempt);
}

/** Returns the variant of an athlete's last attempt, also of an earlier day or a sheet; undefined if none. */
export function lastVariant(db: ReadableDb, athleteId: number, test: TestCode): string | undefined {
  const sql = `SELECT variant FROM (
      SELECT variant, date, seq FROM ${source} JOIN day ON day.id = day_id
      WHERE athlete_id = @athleteId AND test = @test AND void.attempt_id IS NULL
      UNION ALL SELECT variant, date, 0 FROM past_mark WHERE athlete_id = @athleteId AND test = @test)
    ORDER BY date DESC, seq DESC LIMIT 1`;
  return firstRow<{ variant: string }>(db, sql, { athleteId, test })?.variant;
}

/** Where and by whom a standing attempt was entered. */
export type StandingPlace = Pick<Attempt, "variant" | "slot" | "enteredBy">;

/** Returns where the standing attempts of one test are, of any variant, in the order of entry; not what was seen. */
export function standingPlaces(
  db: ReadableDb,
  dayId: number,
  athleteId: number,
  test: TestCode,
): StandingPlace[] {
  const sql = `SELECT variant, slot, entered_by AS enteredBy FROM ${sourceOfAthlete}
    WHERE athlete_id = @athleteId AND day_id = @dayId AND test = @test AND void.attempt_id IS NULL ORDER BY seq`;
  return allRows(db, sql, { dayId, athleteId, test });
}

/** Returns the standing attempts of one test, of any variant. */
export function standingAttempts(
  db: ReadableDb,
  dayId: number,
  athleteId: number,
  test: TestCode,
): KeptAttempt[] {
  const sql = `SELECT ${columns} FROM ${sourceOfAthlete} WHERE athlete_id = @athleteId AND day_id = @dayId AND test = @test
    AND void.attempt_id IS NULL ORDER BY seq`;
  return allRows<AttemptRow>(db, sql, { dayId, athleteId, test }).map(asAttempt);
}

/**
 * Adds an attempt. It was done when the one that it corrects was; without a heat of its own it gets that one's, if by the
 * same athlete.
 */
export function addAttempt(db: WritableDb, dayId: number, attempt: Attempt): void {
  const sql = `INSERT INTO attempt
    (id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at, replaces, result, performed,
      heat_id)
    VALUES (@id, @dayId, @athleteId, @test, @variant, @slot, @seen, @enteredBy, @note, @source, @at, @replaces, @result,
      CASE WHEN @replaces IN (SELECT id FROM attempt) THEN (SELECT performed FROM attempt WHERE id = @replaces)
        ELSE @performed END,
      coalesce(@heatId, (SELECT heat_id FROM attempt WHERE id = @replaces AND athlete_id = @athleteId)))`;
  execute(db, sql, { ...attempt, dayId, seen: JSON.stringify(attempt.seen) });
}

export function addVoid(db: WritableDb, attemptId: string, reason: string, by: string, at: string): void {
  const sql = "INSERT INTO void (attempt_id, reason, voided_by, at) VALUES (@attemptId, @reason, @by, @at)";
  execute(db, sql, { attemptId, reason, by, at });
}
