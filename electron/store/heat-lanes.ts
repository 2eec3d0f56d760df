import type { TestCode } from "../domain/tests/registry.ts";
import { type ReadableDb, statement, type WritableDb } from "./database.ts";

/** Who is in a lane, and how they do the test. */
export interface HeatLane {
  readonly lane: number;
  readonly athleteId: number;
  readonly variant: string;
}

/** A lane of a heat that is gathered or run. */
export interface TakenLane extends HeatLane {
  readonly heatId: string;
  readonly test: TestCode;
}

export function lanesOf(db: ReadableDb, heatId: string): HeatLane[] {
  const sql = "SELECT lane, athlete_id AS athleteId, variant FROM heat_lane WHERE heat_id = ? ORDER BY lane";
  return statement<[string], HeatLane>(db, sql).all(heatId);
}

/** Everybody of a day who is in a lane just now. */
export function takenLanes(db: ReadableDb, dayId: number): TakenLane[] {
  const sql = `SELECT heat_id AS heatId, test, lane, athlete_id AS athleteId, variant
    FROM heat_lane JOIN heat ON heat.id = heat_id WHERE heat.day_id = ? AND state <> 'ended' ORDER BY heat_id, lane`;
  return statement<[number], TakenLane>(db, sql).all(dayId);
}

/** Puts somebody in a free lane. */
export function takeLane(db: WritableDb, heat: { id: string; dayId: number }, lane: HeatLane): void {
  const sql = "INSERT INTO heat_lane (heat_id, lane, day_id, athlete_id, variant) VALUES (?, ?, ?, ?, ?)";
  const take = statement<[string, number, number, number, string]>(db, sql);
  take.run(heat.id, lane.lane, heat.dayId, lane.athleteId, lane.variant);
}

export function freeLane(db: WritableDb, heatId: string, lane: number): void {
  statement<[string, number]>(db, "DELETE FROM heat_lane WHERE heat_id = ? AND lane = ?").run(heatId, lane);
}

export function setLaneVariant(db: WritableDb, heatId: string, lane: number, variant: string): void {
  const sql = "UPDATE heat_lane SET variant = ? WHERE heat_id = ? AND lane = ?";
  statement<[string, string, number]>(db, sql).run(variant, heatId, lane);
}
