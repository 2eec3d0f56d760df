import { nextCall } from "../../domain/queue/queue.ts";
import { Refusal } from "../../domain/refusal.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import { presentById } from "../../store/reads/present.ts";
import { endCallTo, setCall } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import { leaveOut, leftOut, takeBackIn } from "../../store/tables/entrants.ts";
import type { Holder } from "../../store/tables/heats.ts";
import { heldAthletes } from "../lanes/held.ts";
import { inCallOrder } from "./call-order.ts";
import { queueOf } from "./runners.ts";
import { doneBy, nobodyToCall, requirePresent, requireTesting, requireTurn } from "./who.ts";

/** A call to be made: to which test, by whom, and when (ISO 8601). */
interface WantedCall {
  readonly test: TestCode;
  readonly holder: Holder;
  readonly at: string;
}

/**
 * Calls an athlete to a test.
 * @throws Refusal when the athlete does not test, skips this test, has done it, or has another one to do first.
 */
export function call(db: WritableDb, day: Day, athleteId: number, wanted: WantedCall): void {
  const { test } = wanted;
  const who = requirePresent(db, day, athleteId);
  requireTesting(db, day, who, test);
  if (doneBy(db, day, athleteId).has(test)) {
    throw new Refusal("conflict", sentence("station.done", { name: who.name }));
  }
  requireTurn(db, day, who, test);
  setCall(db, day.id, { athleteId, ...wanted });
}

/** Calls the next rested athlete; returns their id. @throws Refusal `conflict` when nobody waits, or all rest. */
export function callNext(db: WritableDb, day: Day, wanted: WantedCall): number {
  const { test, at: now } = wanted;
  const held = heldAthletes(db, day.id);
  const waiting = queueOf(db, day, test, now).filter(({ athleteId }) => !held.has(athleteId));
  const next = nextCall(inCallOrder(db, day, waiting, { test, count: 1, now }), now);
  if (!("who" in next)) throw nobodyToCall("resting" in next ? next.resting : null, now);
  setCall(db, day.id, { athleteId: next.who.athleteId, ...wanted });
  return next.who.athleteId;
}

/**
 * Lets an athlete skip a test; a call to it ends. Skipping it again changes nothing.
 * @throws Refusal when the athlete does not test today or has done this test.
 */
export function skip(
  db: WritableDb,
  day: Day,
  which: { readonly athleteId: number; readonly test: TestCode },
  decision: { readonly reason: string; readonly decidedBy: string; readonly at: string },
): void {
  const { athleteId, test } = which;
  const who = requirePresent(db, day, athleteId);
  if (who.state !== "testing") {
    throw new Refusal("conflict", sentence(`station.state.${who.state}`, { name: who.name }));
  }
  if (doneBy(db, day, athleteId).has(test)) {
    throw new Refusal("conflict", sentence("station.done", { name: who.name }));
  }
  leaveOut(db, day.id, { athleteId, test, kind: "skip", ...decision });
  endCallTo(db, day.id, athleteId, test);
}

/** Undoes a skip. @throws Refusal `conflict` for a test skipped since check-in, which only check-in changes. */
export function unskip(db: WritableDb, day: Day, athleteId: number, test: TestCode): void {
  const left = leftOut(db, day.id).find((each) => each.athleteId === athleteId && each.test === test);
  if (left?.kind === "readiness") {
    const name = presentById(db, day.id, athleteId)?.name ?? "";
    throw new Refusal("conflict", sentence("station.leftOut.readiness", { name }));
  }
  takeBackIn(db, day.id, athleteId, test);
}
