import { Refusal } from "../../domain/refusal.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { slotTaken } from "../../domain/tests/slots.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../connection/database.ts";
import {
  type Attempt,
  addAttempt,
  addVoid,
  attemptById,
  type KeptAttempt,
  standingAttempts,
} from "./attempts.ts";
import { deriveMark, parametersOf } from "./marks.ts";

/** An attempt to enter; its slot follows from what was seen. */
export interface NewAttempt extends Omit<Attempt, "slot" | "heatId" | "result" | "performed"> {
  /** When it was done; left out: when it was entered, or of a sheet, not known. */
  readonly performed?: string | null;
  /** The heat and the lane's result that it comes from; left out for what people enter. */
  readonly fromHeat?: { readonly heatId: string; readonly result: string };
}

/** The reason why an attempt is void. */
export interface VoidReason {
  readonly reason: string;
  readonly by: string;
  readonly at: string;
}

/** The outcome of an entry: `known` when this id was entered before (a retry gets the first answer). */
export interface Recorded {
  readonly outcome: "added" | "known";
  readonly mark: Mark | null;
}

/**
 * Adds an attempt and derives its mark. Part of the caller's transaction.
 * @throws Refusal `conflict` when the id is known with other content, or when the attempt's slot is taken: correct the
 * standing one instead.
 */
export function recordAttempt(db: WritableDb, dayId: number, attempt: NewAttempt): Recorded {
  const protocol = protocolOf(attempt.test);
  const seen = protocol.attempt.parse(attempt.seen);
  const known = attemptById(db, attempt.id);
  if (known !== undefined) return answerRetry(db, dayId, { ...attempt, seen }, known);
  const slot = protocol.slot(seen);
  requireRoom(db, dayId, attempt, slot);
  const { fromHeat, ...entered } = attempt;
  const { heatId = null, result = null } = fromHeat ?? {};
  const { performed = attempt.source === "sheet" ? null : attempt.at } = attempt;
  addAttempt(db, dayId, { ...entered, performed, seen, slot, heatId, result });
  return { outcome: "added", mark: deriveMark(db, dayId, attempt.athleteId, attempt.test, attempt.variant) };
}

function requireRoom(db: ReadableDb, dayId: number, attempt: NewAttempt, slot: string): void {
  const { athleteId, test, variant } = attempt;
  const there = standingAttempts(db, dayId, athleteId, test);
  const inSlot = there.filter((other) => other.variant === variant && other.slot === slot);
  const held = { count: inSlot.length, by: inSlot[0]?.enteredBy ?? "" };
  const taken = slotTaken(test, parametersOf(db, dayId, test), held);
  if (taken !== null) throw new Refusal("conflict", taken);
}

function answerRetry(
  db: WritableDb,
  dayId: number,
  attempt: NewAttempt,
  known: KeptAttempt & { dayId: number },
): Recorded {
  const same =
    known.dayId === dayId &&
    known.athleteId === attempt.athleteId &&
    known.test === attempt.test &&
    known.variant === attempt.variant &&
    // A correction that another device brought is known without what it corrects, where the store lacked that.
    (known.replaces === attempt.replaces || known.replaces === null) &&
    JSON.stringify(known.seen) === JSON.stringify(attempt.seen);
  if (!same) throw new Refusal("conflict", sentence("record.otherAttempt"));
  return { outcome: "known", mark: deriveMark(db, dayId, known.athleteId, known.test, known.variant) };
}

/**
 * Voids an attempt (it stays, with who, when and why) and derives its mark again. Voiding it twice changes nothing.
 * Part of the caller's transaction.
 * @throws Refusal `not-found` when there is no such attempt.
 */
export function voidAttempt(db: WritableDb, attemptId: string, ending: VoidReason): Mark | null {
  const attempt = attemptById(db, attemptId);
  if (attempt === undefined) throw new Refusal("not-found", sentence("record.unknownAttempt"));
  if (attempt.void === null) addVoid(db, attemptId, ending.reason, ending.by, ending.at);
  return deriveMark(db, attempt.dayId, attempt.athleteId, attempt.test, attempt.variant);
}
