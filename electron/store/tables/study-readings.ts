import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** Which series of which study. */
export interface SeriesPlace {
  readonly studyId: string;
  readonly position: number;
}

/** A reading brought for a study, apart from all attempts and marks. */
export interface NewReading extends SeriesPlace {
  /** Made by the client or from the sheet's row, so that a retry is known. */
  readonly id: string;
  readonly athleteId: number;
  /** In the test's grains; null takes away the reading before. */
  readonly value: number | null;
  readonly source: "sheet" | "keyed";
  readonly by: string;
  /** Why the reading before does not count; empty for a first one. */
  readonly reason: string;
  readonly at: string;
}

/** The newest reading of an athlete in a series, which is the one that counts. */
export interface StandingReading {
  readonly position: number;
  readonly athleteId: number;
  readonly value: number;
}

/** SQLite's max() takes the other columns from the newest row; one that takes a reading away has no value. */
const standingSql = `SELECT position, athleteId, value FROM (
    SELECT position, athlete_id AS athleteId, value, max(seq) FROM study_reading
    WHERE study_id = @studyId GROUP BY position, athlete_id)
  WHERE value IS NOT NULL ORDER BY position, athleteId`;

/** Returns the readings of a study that count. */
export function standingReadings(db: ReadableDb, studyId: string): StandingReading[] {
  return allRows(db, standingSql, { studyId });
}

/** Returns whether a reading with this id was entered, and what it said. */
export function readingById(db: ReadableDb, id: string): Omit<NewReading, "source" | "at"> | undefined {
  const sql = `SELECT id, study_id AS studyId, position, athlete_id AS athleteId, value, entered_by AS by, reason
    FROM study_reading WHERE id = @id`;
  return firstRow(db, sql, { id });
}

/** Adds a reading; the store refuses a second one of an athlete in a series without a reason. */
export function addReading(db: WritableDb, reading: NewReading): void {
  const sql = `INSERT INTO study_reading
    (id, study_id, position, athlete_id, value, source, entered_by, reason, at)
    VALUES (@id, @studyId, @position, @athleteId, @value, @source, @by, @reason, @at)`;
  execute(db, sql, { ...reading });
}

/** Returns whether a study ever had a reading: it then stays. */
export function hasReadings(db: ReadableDb, studyId: string): boolean {
  return (
    firstRow(db, "SELECT 1 FROM study_reading WHERE study_id = @studyId LIMIT 1", { studyId }) !== undefined
  );
}

/** Returns the tests of studies in which two athletes have a reading each in one series. */
export function readingsOfBoth(db: ReadableDb, kept: number, gone: number): { test: TestCode }[] {
  const sql = `SELECT DISTINCT study.test FROM study JOIN study_reading a ON a.study_id = study.id
    JOIN study_reading b ON b.study_id = a.study_id AND b.position = a.position
    WHERE a.athlete_id = @kept AND b.athlete_id = @gone ORDER BY study.test`;
  return allRows(db, sql, { kept, gone });
}
