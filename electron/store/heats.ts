import type { Moment } from "../domain/heats/clock.ts";
import type { TestCode } from "../domain/tests/registry.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";

/** One running of one test. */
export interface Heat {
  /** Made by the client, so that a retry is known. */
  readonly id: string;
  readonly dayId: number;
  readonly test: TestCode;
  /** How many lanes the station has. */
  readonly lanes: number;
  readonly state: "gathering" | "running" | "ended";
  readonly gatheredAt: string;
  /** Time 0; null until it is known. */
  readonly zero: Moment | null;
  /** Null until it has ended. */
  readonly ended: Ending | null;
}

export interface Ending {
  readonly ending: "done" | "called-off";
  /** Empty for one that was run to its end. */
  readonly reason: string;
  readonly by: string;
  readonly at: string;
}

interface HeatRow extends Omit<Heat, "zero" | "ended"> {
  readonly zeroMs: number | null;
  readonly zeroBoot: string | null;
  readonly zeroWall: string | null;
  readonly ending: Ending["ending"] | null;
  readonly reason: string;
  readonly endedBy: string;
  readonly endedAt: string | null;
}

const columns = `id, day_id AS dayId, test, lanes, state, gathered_at AS gatheredAt, zero_ms AS zeroMs,
  zero_boot AS zeroBoot, zero_wall AS zeroWall, ending, reason, ended_by AS endedBy, ended_at AS endedAt`;

function asHeat(row: HeatRow): Heat {
  const { zeroMs, zeroBoot, zeroWall, ending, reason, endedBy, endedAt, ...rest } = row;
  const started = zeroMs !== null && zeroBoot !== null && zeroWall !== null;
  return {
    ...rest,
    zero: started ? { ms: zeroMs, boot: zeroBoot, wall: zeroWall } : null,
    ended: ending === null ? null : { ending, reason, by: endedBy, at: endedAt ?? "" },
  };
}

export function heatById(db: ReadableDb, id: string): Heat | undefined {
  const row = statement<[string], HeatRow>(db, `SELECT ${columns} FROM heat WHERE id = ?`).get(id);
  return row === undefined ? undefined : asHeat(row);
}

/** The heats of a day that are gathered or run just now, at most one a test. */
export function liveHeats(db: ReadableDb, dayId: number): Heat[] {
  const sql = `SELECT ${columns} FROM heat WHERE day_id = ? AND state <> 'ended'`;
  return statement<[number], HeatRow>(db, sql).all(dayId).map(asHeat);
}

export function liveHeat(db: ReadableDb, dayId: number, test: TestCode): Heat | undefined {
  return liveHeats(db, dayId).find((heat) => heat.test === test);
}

/** The heats of a test that ended last, newest first. */
export function endedHeats(db: ReadableDb, dayId: number, test: TestCode, count: number): Heat[] {
  const sql = `SELECT ${columns} FROM heat WHERE day_id = ? AND test = ? AND state = 'ended'
    ORDER BY ended_at DESC, id LIMIT ?`;
  return statement<[number, string, number], HeatRow>(db, sql).all(dayId, test, count).map(asHeat);
}

/** Adds a heat that is being gathered. */
export function addHeat(
  db: WritableDb,
  heat: Pick<Heat, "id" | "dayId" | "test" | "lanes" | "gatheredAt">,
): void {
  const sql = `INSERT INTO heat (id, day_id, test, lanes, state, gathered_at, reason, ended_by)
    VALUES (?, ?, ?, ?, 'gathering', ?, '', '')`;
  const add = statement<[string, number, string, number, string]>(db, sql);
  add.run(heat.id, heat.dayId, heat.test, heat.lanes, heat.gatheredAt);
}

export function setLaneCount(db: WritableDb, heatId: string, lanes: number): void {
  statement<[number, string]>(db, "UPDATE heat SET lanes = ? WHERE id = ?").run(lanes, heatId);
}

/** Starts a heat, once. */
export function startHeat(db: WritableDb, heatId: string, zero: Moment): void {
  const sql = "UPDATE heat SET state = 'running', zero_ms = ?, zero_boot = ?, zero_wall = ? WHERE id = ?";
  statement<[number, string, string, string]>(db, sql).run(zero.ms, zero.boot, zero.wall, heatId);
}

/** Ends a heat for good. */
export function endHeat(db: WritableDb, heatId: string, { ending, reason, by, at }: Ending): void {
  const sql =
    "UPDATE heat SET state = 'ended', ending = ?, reason = ?, ended_by = ?, ended_at = ? WHERE id = ?";
  statement<[string, string, string, string, string]>(db, sql).run(ending, reason, by, at, heatId);
}
