import { fillFrom, isSoonRested } from "../../domain/heats/fill.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { absences, addAbsence } from "../../store/tables/absences.ts";
import { endCallTo, takeCall } from "../../store/tables/calls.ts";
import { eventsOf } from "../../store/tables/heat-events.ts";
import { freeLane, type HeatLane, lanesOf, setLaneVariant, takeLane } from "../../store/tables/heat-lanes.ts";
import type { Heat } from "../../store/tables/heats.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import type { Desk } from "../door/desk.ts";
import { heldAthletes } from "../lanes/held.ts";
import { inCallOrder } from "../station/call-order.ts";
import { calledElsewhere } from "../station/callers.ts";
import { queueOf } from "../station/runners.ts";
import { nobodyToCall } from "../station/who.ts";
import { freeLanes, heatToFill, put, requireOpenLanes, type WantedHeat } from "./make.ts";
import { requireVariant } from "./place.ts";

/**
 * Returns the lane of an athlete who has not begun. Lanes are addressed by athlete, so that a change sent twice never
 * hits somebody who took the lane in between.
 * @throws Refusal `conflict` when the athlete is in no lane, or has begun.
 */
function requireChangeable(db: ReadableDb, heat: Heat, athleteId: number): HeatLane {
  requireOpenLanes(heat);
  const found = lanesOf(db, heat.id).find((each) => each.athleteId === athleteId);
  if (found === undefined) throw new Refusal("conflict", sentence("heat.notInLane"));
  const { lane } = found;
  const begun = eventsOf(db, heat.id).some((event) => event.lane === null || event.lane === lane);
  if (begun) throw new Refusal("conflict", sentence("heat.begun", { lane }));
  return found;
}

/** Sets an athlete's variant of the test. */
export function setVariant(db: WritableDb, heat: Heat, athleteId: number, variant: string): void {
  requireVariant(heat, variant);
  const { lane } = requireChangeable(db, heat, athleteId);
  setLaneVariant(db, heat.id, lane, variant);
}

/** Moves an athlete to another lane; anybody there gets theirs. @throws Refusal `conflict` when either has begun. */
export function move(db: WritableDb, heat: Heat, athleteId: number, to: number): void {
  if (to > heat.lanes) throw new Refusal("bad-input", sentence("heat.noLane", { lane: to }));
  const moved = requireChangeable(db, heat, athleteId);
  if (moved.lane === to) return;
  const there = lanesOf(db, heat.id).find(({ lane }) => lane === to);
  if (there !== undefined) {
    requireChangeable(db, heat, there.athleteId);
    freeLane(db, heat.id, to);
  }
  freeLane(db, heat.id, moved.lane);
  takeLane(db, heat, { ...moved, lane: to });
  if (there !== undefined) takeLane(db, heat, { ...there, lane: moved.lane });
}

/** Empties an athlete's lane: they keep their place in the queue, without a call. */
export function sendBack(db: WritableDb, heat: Heat, athleteId: number): void {
  if (!lanesOf(db, heat.id).some((each) => each.athleteId === athleteId)) return;
  const { lane } = requireChangeable(db, heat, athleteId);
  freeLane(db, heat.id, lane);
  endCallTo(db, heat.dayId, athleteId, heat.test);
}

/** Notes a no-show after a call: the lane is freed, the athlete goes to the end of the queue, and it is counted. */
export function noteAbsent(
  db: WritableDb,
  heat: Heat,
  athleteId: number,
  noted: { readonly id: string; readonly by: string; readonly at: string },
): void {
  if (absences(db, heat.dayId).some(({ id }) => id === noted.id)) return;
  requireChangeable(db, heat, athleteId);
  sendBack(db, heat, athleteId);
  addAbsence(db, heat.dayId, { ...noted, athleteId, test: heat.test });
}

interface Gathered {
  readonly heatId: string;
  readonly placed: HeatLane[];
  /** The reason for free lanes although somebody waits: they still rest. */
  readonly resting: { readonly bib: number; readonly readyAt: string; readonly soon: boolean } | null;
}

/**
 * Calls the next athletes into the free lanes.
 * @throws Refusal `conflict` when the heat's clock runs, or nobody can be called into an empty heat.
 */
export function gather(desk: Desk, wanted: WantedHeat): Gathered {
  return desk.store.write(["heats", "calls"], (db) => {
    const day = requireOpenDay(db);
    const heat = heatToFill(db, desk, day, wanted);
    const now = desk.now().toISOString();
    const own = lanesOf(db, heat.id);
    const taken = new Set([
      ...heldAthletes(db, day.id),
      // Whoever has a lane of this heat gets no second one in it, done or not.
      ...own.map(({ athleteId }) => athleteId),
      ...calledElsewhere(db, day, heat).keys(),
    ]);
    const free = freeLanes(db, heat);
    const waiting = queueOf(db, day, heat.test, now).filter(({ athleteId }) => !taken.has(athleteId));
    const byHand = waiting.filter(({ calledAt }) => calledAt !== null).length;
    const count = Math.max(0, free.length - byHand);
    const order = inCallOrder(db, day, waiting, { test: heat.test, count, now });
    const { called, resting } = fillFrom(order, taken, free.length, now);
    if (called.length === 0 && own.length === 0) throw nobodyToCall(resting, now);
    const placed = called.map(({ athleteId, calledAt }, index) => {
      takeCall(db, day.id, { athleteId, test: heat.test, at: calledAt ?? now, holder: heat.holder });
      return put(db, heat, free[index] ?? 0, athleteId);
    });
    const rest =
      resting === null
        ? null
        : { bib: resting.bib, readyAt: resting.readyAt, soon: isSoonRested(resting.readyAt, now) };
    return { heatId: heat.id, placed, resting: rest };
  });
}
