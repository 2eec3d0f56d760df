import type { HeatEvent } from "../../domain/heats/heat.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** A stored tap, with its author and its wall-clock time. */
export interface KeptEvent extends HeatEvent {
  readonly by: string;
  readonly at: string;
}

interface EventRow extends Omit<KeptEvent, "detail"> {
  readonly detail: string;
}

const columns = "id, lane, kind, at_ms AS atMs, detail, tapped_by AS by, at";

function asEvent(row: EventRow): KeptEvent {
  return { ...row, detail: JSON.parse(row.detail) as unknown };
}

/** Returns all taps of a heat in the order in which they arrived. */
export function eventsOf(db: ReadableDb, heatId: string): KeptEvent[] {
  const sql = `SELECT ${columns} FROM heat_event WHERE heat_id = @heatId ORDER BY seq`;
  return allRows<EventRow>(db, sql, { heatId }).map(asEvent);
}

/** Returns the heat that a tap belongs to; undefined for an unknown tap. */
export function heatOfEvent(db: ReadableDb, id: string): string | undefined {
  const sql = "SELECT heat_id AS heatId FROM heat_event WHERE id = @id";
  return firstRow<{ heatId: string }>(db, sql, { id })?.heatId;
}

export function addEvent(db: WritableDb, heatId: string, event: KeptEvent): void {
  const sql = `INSERT INTO heat_event (id, heat_id, lane, kind, at_ms, detail, tapped_by, at)
    VALUES (@id, @heatId, @lane, @kind, @atMs, @detail, @by, @at)`;
  execute(db, sql, { ...event, heatId, detail: JSON.stringify(event.detail) });
}

/** Returns the ids of a day's attempts that somebody looked at again and found right. */
export function confirmedAttempts(db: ReadableDb, dayId: number): Set<string> {
  const sql = `SELECT value AS id FROM heat_event JOIN heat ON heat.id = heat_id,
      json_each(heat_event.detail, '$.attemptIds')
    WHERE day_id = @dayId AND kind = 'sure'`;
  return new Set(allRows<{ id: string }>(db, sql, { dayId }).map(({ id }) => id));
}
