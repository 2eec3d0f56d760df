import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { attemptById, type KeptAttempt, standingAttempts } from "../../store/tables/attempts.ts";
import { addEvent } from "../../store/tables/heat-events.ts";
import { lanesOf } from "../../store/tables/heat-lanes.ts";
import type { Heat } from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";
import { elapsedOf, momentOf, requireHeat } from "../lanes/load.ts";
import { isKnown } from "./taps.ts";

/** An answer to the doubt about a result of a heat. `id` is its own, made by the client. */
export interface Confirmation {
  readonly attemptId: string;
  readonly id: string;
  readonly by: string;
}

/**
 * Notes that somebody looked at a live result again and found it right, with all that the athlete did in that test
 * before it; also after the heat has ended. The same id again changes nothing.
 * @throws Refusal `not-found` for what no heat of the open day entered.
 */
export function confirm(desk: Desk, { attemptId, id, by }: Confirmation): void {
  desk.store.write(["heats", "attempts"], (db) => {
    const attempt = attemptById(db, attemptId);
    const { heat } = requireHeat(db, attempt?.heatId ?? "");
    if (attempt === undefined) throw new Refusal("not-found", sentence("record.unknownAttempt"));
    if (isKnown(db, heat.id, id)) return;
    const { wall: at, ...now } = momentOf(desk);
    const atMs = Math.round(elapsedOf(heat, { ...now, wall: at }) ?? 0);
    const detail = { attemptIds: upTo(db, heat, attempt) };
    addEvent(db, heat.id, { id, lane: laneOf(db, heat, attempt), atMs, kind: "sure", detail, by, at });
  });
}

function upTo(db: ReadableDb, heat: Heat, { athleteId, variant, seq }: KeptAttempt): string[] {
  return standingAttempts(db, heat.dayId, athleteId, heat.test)
    .filter((each) => each.variant === variant && each.seq <= seq)
    .map(({ id }) => id);
}

function laneOf(db: ReadableDb, heat: Heat, { athleteId }: KeptAttempt): number | null {
  return lanesOf(db, heat.id).find((lane) => lane.athleteId === athleteId)?.lane ?? null;
}
