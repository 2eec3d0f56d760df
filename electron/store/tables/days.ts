import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

export interface Day {
  readonly id: number;
  /** ISO 8601, by the hall's own calendar. */
  readonly date: string;
  readonly title: string;
  readonly state: "planned" | "open" | "closed";
  /** Rest between two tests of one athlete, in minutes. */
  readonly restMinutes: number;
  /** The calendar day on which it was opened first; null before that, and for days from before this was kept. */
  readonly openedOn: string | null;
}

/** The parameters of one test on one day, as stored; parse with the test's own schema. */
export interface DayProtocol {
  readonly test: TestCode;
  readonly parameters: unknown;
}

const columns = `id, date, title, state, rest_minutes AS restMinutes,
  (SELECT on_date FROM day_event WHERE day_id = day.id AND kind = 'opened' ORDER BY at LIMIT 1) AS openedOn`;

/** Returns the day that is being prepared or held; undefined when there is none. */
export function dayAtHand(db: ReadableDb): Day | undefined {
  return firstRow(db, `SELECT ${columns} FROM day WHERE state <> 'closed'`);
}

export function dayById(db: ReadableDb, id: number): Day | undefined {
  return firstRow(db, `SELECT ${columns} FROM day WHERE id = @id`, { id });
}

/** Returns what tells a day from every other one, also from one of another laptop's; a backup has the same. */
export function identityOfDay(db: ReadableDb, id: number): string | undefined {
  return firstRow<{ identity: string }>(db, "SELECT identity FROM day WHERE id = @id", { id })?.identity;
}

/** Returns all days, newest first. */
export function allDays(db: ReadableDb): Day[] {
  return allRows(db, `SELECT ${columns} FROM day ORDER BY date DESC, id DESC`);
}

/**
 * Adds a planned day with the protocols that it will freeze when it opens; returns its id, which no day had before, not
 * even one that was thrown away.
 */
export function addDay(
  db: WritableDb,
  day: Pick<Day, "date" | "title" | "restMinutes">,
  protocols: readonly DayProtocol[],
): number {
  const sql = `INSERT INTO day (id, date, title, state, rest_minutes, identity)
    SELECT 1 + max(coalesce((SELECT max(id) FROM day), 0), coalesce((SELECT max(day_id) FROM discarded_day), 0)),
      @date, @title, 'planned', @restMinutes, lower(hex(randomblob(16)))`;
  const id = Number(execute(db, sql, { ...day }).lastInsertRowid);
  for (const protocol of protocols) setDayProtocol(db, id, protocol);
  return id;
}

/** Sets one test's parameters; the store refuses it once the day is open. */
export function setDayProtocol(db: WritableDb, dayId: number, { test, parameters }: DayProtocol): void {
  const sql = `INSERT INTO day_protocol (day_id, test, parameters) VALUES (@dayId, @test, @parameters)
    ON CONFLICT DO UPDATE SET parameters = excluded.parameters`;
  execute(db, sql, { dayId, test, parameters: JSON.stringify(parameters) });
}

export function dayProtocols(db: ReadableDb, dayId: number): DayProtocol[] {
  const sql = "SELECT test, parameters FROM day_protocol WHERE day_id = @dayId";
  const rows = allRows<{ test: TestCode; parameters: string }>(db, sql, { dayId });
  return rows.map((row) => ({ test: row.test, parameters: JSON.parse(row.parameters) as unknown }));
}

/** Returns the parameters of one test as they are kept (JSON); undefined where the day has none. */
export function protocolText(db: ReadableDb, dayId: number, test: TestCode): string | undefined {
  const sql = "SELECT parameters FROM day_protocol WHERE day_id = @dayId AND test = @test";
  return firstRow<{ parameters: string }>(db, sql, { dayId, test })?.parameters;
}

export function setDayState(db: WritableDb, dayId: number, state: Day["state"]): void {
  execute(db, "UPDATE day SET state = @state WHERE id = @dayId", { dayId, state });
}

/** Sets what a planned day is called, and its date. */
export function setDayPlan(db: WritableDb, dayId: number, plan: Pick<Day, "date" | "title">): void {
  execute(db, "UPDATE day SET date = @date, title = @title WHERE id = @dayId", { ...plan, dayId });
}

/** Returns true if the day with this id was thrown away. */
export function wasDiscarded(db: ReadableDb, dayId: number): boolean {
  return firstRow(db, "SELECT day_id FROM discarded_day WHERE day_id = @dayId", { dayId }) !== undefined;
}

/** Throws a planned day away with its rules, its list and its plan; the store refuses one in which anything else was entered. */
export function discardDay(db: WritableDb, dayId: number, at: string): void {
  for (const sql of [
    "DELETE FROM day_protocol WHERE day_id = @dayId",
    "DELETE FROM day_plan WHERE day_id = @dayId",
    "DELETE FROM entrant WHERE day_id = @dayId AND state = 'expected'",
    "DELETE FROM day WHERE id = @dayId",
  ]) {
    execute(db, sql, { dayId });
  }
  execute(db, "INSERT INTO discarded_day (day_id, at) VALUES (@dayId, @at)", { dayId, at });
}

/** Sets the rest between two tests of one athlete; no mark depends on it. */
export function setDayRest(db: WritableDb, dayId: number, restMinutes: number): void {
  execute(db, "UPDATE day SET rest_minutes = @restMinutes WHERE id = @dayId", { dayId, restMinutes });
}
