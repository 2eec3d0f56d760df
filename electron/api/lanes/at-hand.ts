import { z } from "zod";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";
import { devicesOf } from "../../store/tables/devices.ts";
import { type Holder, liveHeats } from "../../store/tables/heats.ts";
import { testSchema } from "../door/shapes.ts";
import { heldLanes } from "./held.ts";

export const heatAtHandSchema = z.object({
  heatId: z.string(),
  test: testSchema,
  /** Null: the table. */
  holder: z.string().nullable(),
  /** The device's name; null for the table, and for a device that is no longer joined. */
  device: z.string().nullable(),
  state: z.enum(["gathering", "running"]),
});

/** A heat that is gathered or run, with the athletes whom its lanes hold now, by lane. */
export interface HeatAtHand extends z.infer<typeof heatAtHandSchema> {
  readonly athleteIds: readonly number[];
}

/** Returns a day's heats that are gathered or run, at the table and at any device, oldest first. */
export function heatsAtHand(db: ReadableDb, day: Day): HeatAtHand[] {
  const names = new Map<Holder, string>(devicesOf(db, day.id).map(({ id, name }) => [id, name]));
  const held = Map.groupBy(heldLanes(db, day.id), ({ heatId }) => heatId);
  return liveHeats(db, day.id).map(({ id, test, holder, state }) => ({
    ...{ heatId: id, test, holder },
    device: names.get(holder) ?? null,
    state: state === "gathering" ? "gathering" : "running",
    athleteIds: (held.get(id) ?? []).toSorted((a, b) => a.lane - b.lane).map(({ athleteId }) => athleteId),
  }));
}
