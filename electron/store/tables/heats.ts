import type { Moment } from "../../domain/heats/clock.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** Who gathered a heat: the id of a device on the network, or null for the table itself. */
export type Holder = string | null;

/** One heat of one test. */
export interface Heat {
  /** Made by the client, so that a retry is recognised. */
  readonly id: string;
  readonly dayId: number;
  readonly test: TestCode;
  readonly holder: Holder;
  /** Number of lanes at the station. */
  readonly lanes: number;
  readonly state: "gathering" | "running" | "ended";
  readonly gatheredAt: string;
  /** Initials; empty for a heat of before they were kept. */
  readonly gatheredBy: string;
  /** Time 0; null until it is known. */
  readonly zero: Moment | null;
  /** How far time 0 may be off, in ms; null where nobody knows. */
  readonly startDoubtMs: number | null;
  /** Null until it has ended. */
  readonly ended: HeatEnding | null;
}

export interface HeatEnding {
  readonly ending: "done" | "called-off";
  /** Empty for a heat that ran to its end. */
  readonly reason: string;
  readonly by: string;
  readonly at: string;
}

interface HeatRow extends Omit<Heat, "zero" | "ended"> {
  readonly zeroMs: number | null;
  readonly zeroBoot: string | null;
  readonly zeroWall: string | null;
  readonly ending: HeatEnding["ending"] | null;
  readonly reason: string;
  readonly endedBy: string;
  readonly endedAt: string | null;
}

const columns = `id, day_id AS dayId, test, device_id AS holder, lanes, state, gathered_at AS gatheredAt,
  gathered_by AS gatheredBy,
  zero_ms AS zeroMs, zero_boot AS zeroBoot, zero_wall AS zeroWall, start_doubt_ms AS startDoubtMs,
  ending, reason, ended_by AS endedBy, ended_at AS endedAt`;

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
  const row = firstRow<HeatRow>(db, `SELECT ${columns} FROM heat WHERE id = @id`, { id });
  return row === undefined ? undefined : asHeat(row);
}

/** Returns a day's heats that are being gathered or run, at most one of each test and holder, oldest first. */
export function liveHeats(db: ReadableDb, dayId: number): Heat[] {
  const sql = `SELECT ${columns} FROM heat WHERE day_id = @dayId AND state <> 'ended'
    ORDER BY gathered_at, id`;
  return allRows<HeatRow>(db, sql, { dayId }).map(asHeat);
}

export function liveHeat(db: ReadableDb, dayId: number, test: TestCode, holder: Holder): Heat | undefined {
  return liveHeats(db, dayId).find((heat) => heat.test === test && heat.holder === holder);
}

/** Returns the latest ended heats of a test, newest first. */
export function endedHeats(db: ReadableDb, dayId: number, test: TestCode, count: number): Heat[] {
  const sql = `SELECT ${columns} FROM heat WHERE day_id = @dayId AND test = @test AND state = 'ended'
    ORDER BY ended_at DESC, id LIMIT @count`;
  return allRows<HeatRow>(db, sql, { dayId, test, count }).map(asHeat);
}

/** Adds a heat that is being gathered. */
export function addHeat(
  db: WritableDb,
  heat: Pick<Heat, "id" | "dayId" | "test" | "holder" | "lanes" | "gatheredAt" | "gatheredBy">,
): void {
  const sql = `INSERT INTO heat (id, day_id, test, device_id, lanes, state, gathered_at, gathered_by, reason, ended_by)
    VALUES (@id, @dayId, @test, @holder, @lanes, 'gathering', @gatheredAt, @gatheredBy, '', '')`;
  execute(db, sql, { ...heat });
}

export function setLaneCount(db: WritableDb, heatId: string, lanes: number): void {
  execute(db, "UPDATE heat SET lanes = @lanes WHERE id = @heatId", { heatId, lanes });
}

/** Starts a heat, once. `startDoubtMs`: how far `zero` may be off; null where nobody knows. */
export function startHeat(
  db: WritableDb,
  heatId: string,
  zero: Moment,
  startDoubtMs: number | null = null,
): void {
  const sql = `UPDATE heat SET state = 'running', zero_ms = @ms, zero_boot = @boot, zero_wall = @wall,
    start_doubt_ms = @startDoubtMs WHERE id = @heatId`;
  execute(db, sql, { ...zero, startDoubtMs, heatId });
}

/** Ends a heat for good. */
export function endHeat(db: WritableDb, heatId: string, ending: HeatEnding): void {
  const sql = `UPDATE heat SET state = 'ended', ending = @ending, reason = @reason, ended_by = @by, ended_at = @at
    WHERE id = @heatId`;
  execute(db, sql, { ...ending, heatId });
}
