import type { StudyKind } from "../../domain/study/shape.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** A measuring study as it was planned. */
export interface Study {
  /** Made by the client, so that a retry is known. */
  readonly id: string;
  readonly test: TestCode;
  readonly variant: string;
  readonly kind: StudyKind;
  /** The day whose bibs its sheets mean; null for attempts of no day of this program. */
  readonly dayId: number | null;
  /** How many athletes it wants. */
  readonly aim: number;
  readonly by: string;
  readonly at: string;
}

/** One series of readings of a study: a judge's, or a visit's. */
export interface StudySeries {
  /** From 1. */
  readonly position: number;
  /** The day whose marks are its readings; null where readings are brought. */
  readonly dayId: number | null;
  /** Initials of who reads; with a day, of who entered those of its marks that are meant. Empty for all marks and for visits. */
  readonly judge: string;
  /** Of a visit, ISO 8601. */
  readonly date: string | null;
}

const columns = "id, test, variant, kind, day_id AS dayId, aim, planned_by AS by, at";

/** Returns all studies, the newest first. */
export function allStudies(db: ReadableDb): Study[] {
  return allRows(db, `SELECT ${columns} FROM study ORDER BY at DESC, id`);
}

export function studyById(db: ReadableDb, id: string): Study | undefined {
  return firstRow(db, `SELECT ${columns} FROM study WHERE id = @id`, { id });
}

/** Returns a study's series in order. */
export function seriesOf(db: ReadableDb, studyId: string): StudySeries[] {
  const sql = `SELECT position, day_id AS dayId, judge, date FROM study_series
    WHERE study_id = @studyId ORDER BY position`;
  return allRows(db, sql, { studyId });
}

export function addStudy(db: WritableDb, study: Study, series: readonly StudySeries[]): void {
  const sql = `INSERT INTO study (id, test, variant, kind, day_id, aim, planned_by, at)
    VALUES (@id, @test, @variant, @kind, @dayId, @aim, @by, @at)`;
  execute(db, sql, { ...study });
  for (const each of series) {
    const ofSeries = `INSERT INTO study_series (study_id, position, day_id, judge, date)
      VALUES (@studyId, @position, @dayId, @judge, @date)`;
    execute(db, ofSeries, { ...each, studyId: study.id });
  }
}

/** Takes away a study; the store refuses it once there was any reading. */
export function dropStudy(db: WritableDb, id: string): void {
  execute(db, "DELETE FROM study_series WHERE study_id = @id", { id });
  execute(db, "DELETE FROM study WHERE id = @id", { id });
}
