import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** One line of a day's history. */
export interface DayEvent {
  readonly id: string;
  readonly kind: "opened" | "closed" | "reopened";
  /** ISO 8601 instant. */
  readonly at: string;
  /** The hall's calendar day of that moment. */
  readonly on: string;
  /** Initials, and why: of whoever opened it again; else empty. */
  readonly by: string;
  readonly reason: string;
}

const columns = 'id, kind, at, on_date AS "on", done_by AS by, reason';

/** The history of one day, oldest first. */
export function dayEvents(db: ReadableDb, dayId: number): DayEvent[] {
  return allRows(db, `SELECT ${columns} FROM day_event WHERE day_id = @dayId ORDER BY at, rowid`, { dayId });
}

/** The day of the line with this id; undefined when no line has it. */
export function dayOfEvent(db: ReadableDb, id: string): number | undefined {
  const sql = "SELECT day_id AS dayId FROM day_event WHERE id = @id";
  return firstRow<{ dayId: number }>(db, sql, { id })?.dayId;
}

export function addDayEvent(db: WritableDb, dayId: number, event: DayEvent): void {
  const sql = `INSERT INTO day_event (id, day_id, kind, at, on_date, done_by, reason)
    VALUES (@id, @dayId, @kind, @at, @on, @by, @reason)`;
  execute(db, sql, { ...event, dayId });
}
