import { after } from "../../domain/heats/clock.ts";
import { countInMs } from "../../domain/heats/fold.ts";
import { type SentStart, startOf } from "../../domain/heats/start.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import { endCallTo } from "../../store/tables/calls.ts";
import type { KeptEvent } from "../../store/tables/heat-events.ts";
import { takeLane } from "../../store/tables/heat-lanes.ts";
import { endHeat, type Heat, startHeat } from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";
import { heldAthletes } from "../lanes/held.ts";
import {
  elapsedOf,
  type LoadedHeat,
  lanesAt,
  load,
  momentOf,
  requireHeat,
  requireLive,
} from "../lanes/load.ts";
import { makeHeat } from "./make.ts";
import { openLanes } from "./over.ts";
import { settle } from "./settle.ts";
import { add } from "./taps.ts";

/**
 * Starts the clock of a gathered heat: the count-in begins at the tap, time 0 comes after it. Starting it again changes
 * nothing: the first start counts.
 * @param sent the tap as the screen that was tapped knows it
 * @throws Refusal `conflict` when all lanes are empty.
 */
export function start(desk: Desk, heatId: string, sent: SentStart): { elapsedMs: number } {
  return desk.store.write(["heats", "calls"], (db) => {
    const { heat } = requireLive(db, heatId);
    if (heat.state === "gathering") begin(db, desk, load(db, heat), sent);
    return { elapsedMs: elapsedOf(requireHeat(db, heatId).heat, momentOf(desk)) ?? 0 };
  });
}

function begin(db: WritableDb, desk: Desk, loaded: LoadedHeat, sent: SentStart): void {
  const { heat, lanes, parameters } = loaded;
  if (lanes.length === 0) throw new Refusal("conflict", sentence("heat.empty"));
  const countIn = countInMs(heat.test, parameters as never);
  const { at, doubtMs } = startOf(sent, momentOf(desk));
  startHeat(db, heat.id, after(at, countIn), doubtMs);
  for (const { athleteId } of lanes) endCallTo(db, heat.dayId, athleteId, heat.test);
}

/**
 * Ends a heat. Ending it twice changes nothing.
 * @param setAside athletes who are not done take no further part; without it, that is refused
 * @throws Refusal `conflict` when somebody is not done.
 */
export function end(desk: Desk, heatId: string, by: string, setAside: boolean): void {
  desk.store.write(["heats", "attempts", "calls"], (db) => {
    const { heat } = requireHeat(db, heatId);
    if (heat.state === "ended") return;
    if (heat.state === "gathering") throw new Refusal("conflict", sentence("heat.notStarted"));
    const loaded = load(db, heat);
    const open = openLanes(loaded);
    if (open.length > 0 && !setAside) {
      throw new Refusal(
        "conflict",
        sentence("heat.stillGoing", { count: open.length, lanes: open.join(", ") }),
      );
    }
    if (open.length > 0) add(db, loaded, asideOf(desk, heat, open, by), "");
    endHeat(db, heat.id, { ending: "done", reason: "", by, at: desk.now().toISOString() });
  });
}

function asideOf(desk: Desk, heat: Heat, lanes: readonly number[], by: string): KeptEvent[] {
  const now = momentOf(desk);
  const atMs = Math.round(elapsedOf(heat, now) ?? 0);
  return lanes.map((lane) => ({
    ...{ id: `${heat.id}.${lane}.aside`, lane, atMs, by, at: now.wall },
    ...{ kind: "aside", detail: {} },
  }));
}

/** The cancelling of a heat, and the new heat with the same athletes. */
export interface CallingOff {
  readonly heatId: string;
  readonly by: string;
  readonly reason: string;
  /** Made by the client; undefined if it is not run again. */
  readonly again: string | undefined;
}

/**
 * Cancels a heat (after a false start, say): it stays with its taps and the reason, and its attempts are void.
 * Cancelling it twice changes nothing.
 * @throws Refusal `conflict` when it has ended in another way.
 */
export function callOff(desk: Desk, { heatId, by, reason, again }: CallingOff): void {
  desk.store.write(["heats", "attempts", "calls"], (db) => {
    const { heat, day } = requireHeat(db, heatId);
    if (heat.ended?.ending === "called-off") return;
    if (heat.ended !== null) throw new Refusal("conflict", sentence("heat.ended"));
    const loaded = load(db, heat);
    const at = desk.now().toISOString();
    settle(db, loaded, lanesAt(loaded, null), [], { by, at, reason });
    endHeat(db, heat.id, { ending: "called-off", reason, by, at });
    if (again === undefined) {
      for (const { athleteId } of loaded.lanes) endCallTo(db, heat.dayId, athleteId, heat.test);
    } else {
      const next = makeHeat(db, desk, day, { ...heat, heatId: again, by });
      // Whoever was set aside may have been called elsewhere since.
      const held = heldAthletes(db, day.id);
      for (const { lane, athleteId, variant } of loaded.lanes)
        if (!held.has(athleteId)) takeLane(db, next, { lane, athleteId, variant });
    }
  });
}
