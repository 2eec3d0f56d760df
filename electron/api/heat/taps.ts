import type { z } from "zod";
import { readWhat, undoTrouble } from "../../domain/heats/fold.ts";
import { isNoTap } from "../../domain/heats/heat.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { presentById } from "../../store/reads/present.ts";
import { endCallTo } from "../../store/tables/calls.ts";
import { addEvent, heatOfEvent, type KeptEvent } from "../../store/tables/heat-events.ts";
import type { Desk } from "../door/desk.ts";
import { say } from "../door/words.ts";
import { heldLanes } from "../lanes/held.ts";
import { elapsedOf, type LoadedHeat, lanesAt, load, momentOf, requireHeat } from "../lanes/load.ts";
import type { tappedSchema, tapSchema } from "./schemas.ts";
import { settle } from "./settle.ts";

type SentTap = z.infer<typeof tapSchema>;
export type Tapped = z.infer<typeof tappedSchema>;

/** Ms that a tap may be ahead of the desk's clock: a trial's start signal comes after its count-in. */
const aheadMs = 10_000;

/**
 * Stores taps and enters the lanes' results, in one transaction. The same ids again change nothing.
 * @throws Refusal when a tap can't belong to this heat; none of them is stored then.
 */
export function tap(desk: Desk, heatId: string, by: string, sent: readonly SentTap[]): Tapped {
  return desk.store.write(["heats", "attempts", "calls"], (db) => {
    const loaded = load(db, requireHeat(db, heatId).heat);
    const fresh = sent.filter(({ id }) => !isKnown(db, heatId, id));
    if (fresh.length > 0) keep(db, desk, loaded, by, fresh);
    return outcomes(load(db, loaded.heat), sent, fresh);
  });
}

/** @throws Refusal `conflict` when the id belongs to another heat. */
export function isKnown(db: ReadableDb, heatId: string, id: string): boolean {
  const known = heatOfEvent(db, id);
  if (known !== undefined && known !== heatId) throw new Refusal("conflict", sentence("heat.otherTap"));
  return known !== undefined;
}

function keep(db: WritableDb, desk: Desk, loaded: LoadedHeat, by: string, fresh: readonly SentTap[]): void {
  const now = momentOf(desk);
  const elapsed = elapsedOf(loaded.heat, now);
  if (elapsed === null) throw new Refusal("conflict", sentence("heat.notStarted"));
  if (loaded.heat.state === "ended") throw new Refusal("conflict", sentence("heat.ended"));
  const events = fresh.map((sentTap) => readTap(loaded, sentTap, elapsed, by, now.wall));
  add(db, loaded, events, say(sentence("heat.reason.changed"), desk.language));
}

/** Stores parsed events and enters the resulting attempts. */
export function add(db: WritableDb, loaded: LoadedHeat, events: readonly KeptEvent[], why: string): void {
  const before = lanesAt(loaded, null);
  for (const event of events) addEvent(db, loaded.heat.id, event);
  const after = lanesAt(loaded, null, [...loaded.events, ...events]);
  const [first] = events;
  if (first === undefined) return;
  settle(db, loaded, before, after, { by: first.by, at: first.at, reason: said(events) ?? why });
  const { heat } = loaded;
  for (const { lane, athleteId } of loaded.lanes) {
    if (events.some((event) => event.lane === null || event.lane === lane))
      endCallTo(db, heat.dayId, athleteId, heat.test);
  }
}

/** Returns the volunteer's reason for running a trial again. */
function said(events: readonly KeptEvent[]): string | undefined {
  for (const { detail } of events) {
    const named = typeof detail === "object" && detail !== null && "reason" in detail ? detail.reason : null;
    if (typeof named === "string") return named;
  }
  return undefined;
}

function readTap(loaded: LoadedHeat, sent: SentTap, elapsed: number, by: string, at: string): KeptEvent {
  const { heat, lanes } = loaded;
  const what = readWhat(heat.test, { kind: sent.kind, detail: sent.detail });
  if (what === null || isNoTap(what)) throw new Refusal("bad-input", sentence("heat.badTap"));
  if (sent.lane !== null && !lanes.some(({ lane }) => lane === sent.lane)) {
    throw new Refusal("conflict", sentence("heat.emptyLane", { lane: sent.lane }));
  }
  if (sent.atMs > elapsed + aheadMs) throw new Refusal("bad-input", sentence("heat.ahead"));
  return { id: sent.id, lane: sent.lane, atMs: Math.round(sent.atMs), ...what, by, at };
}

/** Returns each tap's outcome; idle: it changed no lane. */
function outcomes(loaded: LoadedHeat, sent: readonly SentTap[], fresh: readonly SentTap[]): Tapped {
  const concerned = lanesAt(loaded, null);
  const isIdle = ({ id, lane }: SentTap) =>
    concerned.filter((each) => lane === null || each.lane === lane).every(({ idle }) => idle.includes(id));
  return {
    events: sent.map((each) => ({
      id: each.id,
      outcome: !fresh.includes(each) ? "known" : isIdle(each) ? "idle" : "taken",
    })),
  };
}

/**
 * Refuses to bring back an athlete whom another heat holds since this lane was done or set aside.
 * @throws Refusal `conflict` then.
 */
function requireStillHere(db: ReadableDb, { heat, lanes }: LoadedHeat, lane: number | null): void {
  const held = heldLanes(db, heat.dayId).filter(({ heatId }) => heatId !== heat.id);
  for (const { athleteId } of lanes.filter((each) => lane === null || each.lane === lane)) {
    if (held.every((each) => each.athleteId !== athleteId)) continue;
    const name = presentById(db, heat.dayId, athleteId)?.name ?? "";
    throw new Refusal("conflict", sentence("heat.elsewhere", { name }));
  }
}

/**
 * Undoes a recent tap; its attempts are voided, and the lane goes on. The same id again changes nothing.
 * @throws Refusal `conflict` when it is too late: then it takes a correction, with a reason.
 */
export function undo(desk: Desk, heatId: string, eventId: string, id: string, by: string): void {
  desk.store.write(["heats", "attempts"], (db) => {
    const { heat } = requireHeat(db, heatId);
    if (isKnown(db, heatId, id)) return;
    if (heat.state === "ended") throw new Refusal("conflict", sentence("heat.ended"));
    const loaded = load(db, heat);
    const now = momentOf(desk);
    const elapsed = elapsedOf(heat, now) ?? 0;
    const trouble = undoTrouble(loaded.events, eventId, elapsed);
    if (trouble !== null) throw new Refusal("conflict", trouble);
    const lane = loaded.events.find((event) => event.id === eventId)?.lane ?? null;
    requireStillHere(db, loaded, lane);
    const event = {
      id,
      lane,
      atMs: Math.round(elapsed),
      kind: "undo",
      detail: { eventId },
      by,
      at: now.wall,
    };
    add(db, loaded, [event], say(sentence("heat.reason.undone"), desk.language));
  });
}
