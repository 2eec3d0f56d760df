import type { TestCode } from "../domain/tests/registry.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";

export interface Day {
  readonly id: number;
  /** ISO 8601, the hall's own calendar. */
  readonly date: string;
  readonly title: string;
  readonly state: "planned" | "open" | "closed";
  /** Rest between two tests of one athlete. */
  readonly restMinutes: number;
}

/** The parameters of one test on one day, as stored; parse with the test's own schema. */
export interface DayProtocol {
  readonly test: TestCode;
  readonly parameters: unknown;
}

const columns = "id, date, title, state, rest_minutes AS restMinutes";

/** The day that is being prepared or held; undefined when there is none. */
export function dayAtHand(db: ReadableDb): Day | undefined {
  return statement<[], Day>(db, `SELECT ${columns} FROM day WHERE state <> 'closed'`).get();
}

export function dayById(db: ReadableDb, id: number): Day | undefined {
  return statement<[number], Day>(db, `SELECT ${columns} FROM day WHERE id = ?`).get(id);
}

/** All days, newest first. */
export function allDays(db: ReadableDb): Day[] {
  return statement<[], Day>(db, `SELECT ${columns} FROM day ORDER BY date DESC, id DESC`).all();
}

/** Adds a planned day with the protocols that it will freeze when it opens; returns its id. */
export function addDay(
  db: WritableDb,
  day: Omit<Day, "id" | "state">,
  protocols: readonly DayProtocol[],
): number {
  const sql = "INSERT INTO day (date, title, state, rest_minutes) VALUES (?, ?, 'planned', ?)";
  const made = statement<[string, string, number]>(db, sql);
  const id = Number(made.run(day.date, day.title, day.restMinutes).lastInsertRowid);
  for (const protocol of protocols) setDayProtocol(db, id, protocol);
  return id;
}

/** Sets one test's parameters; refused by the store once the day is open. */
export function setDayProtocol(db: WritableDb, dayId: number, protocol: DayProtocol): void {
  const sql = `INSERT INTO day_protocol (day_id, test, parameters) VALUES (?, ?, ?)
    ON CONFLICT DO UPDATE SET parameters = excluded.parameters`;
  statement<[number, string, string]>(db, sql).run(dayId, protocol.test, JSON.stringify(protocol.parameters));
}

export function dayProtocols(db: ReadableDb, dayId: number): DayProtocol[] {
  const sql = "SELECT test, parameters FROM day_protocol WHERE day_id = ?";
  const rows = statement<[number], { test: TestCode; parameters: string }>(db, sql).all(dayId);
  return rows.map((row) => ({ test: row.test, parameters: JSON.parse(row.parameters) as unknown }));
}

export function setDayState(db: WritableDb, dayId: number, state: Day["state"]): void {
  statement<[string, number]>(db, "UPDATE day SET state = ? WHERE id = ?").run(state, dayId);
}

/** Sets the rest between two tests of one athlete; no mark depends on it. */
export function setDayRest(db: WritableDb, dayId: number, restMinutes: number): void {
  statement<[number, number]>(db, "UPDATE day SET rest_minutes = ? WHERE id = ?").run(restMinutes, dayId);
}
