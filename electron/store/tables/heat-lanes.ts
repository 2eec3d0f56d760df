import type { TestCode } from "../../domain/tests/registry.ts";
import { allRows, execute, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** The athlete in a lane, and their variant of the test. */
export interface HeatLane {
  readonly lane: number;
  readonly athleteId: number;
  readonly variant: string;
}

/** A lane of a heat that is being gathered or run. */
export interface TakenLane extends HeatLane {
  readonly heatId: string;
  readonly test: TestCode;
}

export function lanesOf(db: ReadableDb, heatId: string): HeatLane[] {
  const sql =
    "SELECT lane, athlete_id AS athleteId, variant FROM heat_lane WHERE heat_id = @heatId ORDER BY lane";
  return allRows(db, sql, { heatId });
}

/** Returns the taken lanes of a day's live heats. */
export function takenLanes(db: ReadableDb, dayId: number): TakenLane[] {
  const sql = `SELECT heat_id AS heatId, test, lane, athlete_id AS athleteId, variant FROM heat_lane
    JOIN heat ON heat.id = heat_id WHERE heat.day_id = @dayId AND state <> 'ended' ORDER BY heat_id, lane`;
  return allRows(db, sql, { dayId });
}

/** Puts an athlete in a free lane. */
export function takeLane(db: WritableDb, heat: { id: string; dayId: number }, lane: HeatLane): void {
  const sql = `INSERT INTO heat_lane (heat_id, lane, day_id, athlete_id, variant)
    VALUES (@heatId, @lane, @dayId, @athleteId, @variant)`;
  execute(db, sql, { ...lane, heatId: heat.id, dayId: heat.dayId });
}

export function freeLane(db: WritableDb, heatId: string, lane: number): void {
  execute(db, "DELETE FROM heat_lane WHERE heat_id = @heatId AND lane = @lane", { heatId, lane });
}

export function setLaneVariant(db: WritableDb, heatId: string, lane: number, variant: string): void {
  const sql = "UPDATE heat_lane SET variant = @variant WHERE heat_id = @heatId AND lane = @lane";
  execute(db, sql, { heatId, lane, variant });
}
