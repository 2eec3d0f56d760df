import { Refusal } from "../../domain/refusal.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { slotTaken } from "../../domain/tests/slots.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../connection/database.ts";
import {
  type Attempt,
  addAttempt,
  addVoid,
  attemptById,
  dayIdOfAttempt,
  type KeptAttempt,
  type StandingPlace,
  standingPlaces,
} from "./attempts.ts";
import { type Derived, deriveMark, parametersOf } from "./marks.ts";

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
  const { added, mark } = recordTogether(db, dayId, attempt, [attempt]);
  return { outcome: added > 0 ? "added" : "known", mark: mark?.mark ?? null };
}

/** Whose attempts belong together, and of which test. */
type Together = Pick<NewAttempt, "athleteId" | "test" | "variant">;

/**
 * Adds attempts that make one mark, in their order, derives it once, and returns it with how many were not known before.
 * @throws Refusal as {@link recordAttempt} does
 */
export function recordTogether(
  db: WritableDb,
  dayId: number,
  { athleteId, test, variant }: Together,
  attempts: readonly Omit<NewAttempt, keyof Together>[],
): Derived & { readonly added: number } {
  const inSlots = standingPlaces(db, dayId, athleteId, test).filter((each) => each.variant === variant);
  let added = 0;
  for (const each of attempts) {
    const { attempt: schema, slot: slotOf } = protocolOf(test);
    const attempt = { ...each, athleteId, test, variant, seen: schema.parse(each.seen) };
    if (dayIdOfAttempt(db, attempt.id) !== undefined) {
      requireSame(dayId, attempt, attemptById(db, attempt.id));
      continue;
    }
    const slot = slotOf(attempt.seen);
    requireRoom(
      db,
      dayId,
      test,
      inSlots.filter((other) => other.slot === slot),
    );
    inSlots.push({ variant, slot, enteredBy: attempt.enteredBy });
    add(db, dayId, attempt, slot);
    added += 1;
  }
  return { added, ...deriveMark(db, dayId, athleteId, test, variant) };
}

function add(db: WritableDb, dayId: number, { fromHeat, ...entered }: NewAttempt, slot: string): void {
  const { heatId = null, result = null } = fromHeat ?? {};
  const { performed = entered.source === "sheet" ? null : entered.at } = entered;
  addAttempt(db, dayId, { ...entered, performed, slot, heatId, result });
}

function requireRoom(db: ReadableDb, dayId: number, test: TestCode, there: readonly StandingPlace[]): void {
  const held = { count: there.length, by: there[0]?.enteredBy ?? "" };
  const taken = slotTaken(test, parametersOf(db, dayId, test), held);
  if (taken !== null) throw new Refusal("conflict", taken);
}

function requireSame(
  dayId: number,
  attempt: NewAttempt,
  known: (KeptAttempt & { dayId: number }) | undefined,
): void {
  const same =
    known?.dayId === dayId &&
    known.athleteId === attempt.athleteId &&
    known.test === attempt.test &&
    known.variant === attempt.variant &&
    // A correction that another device brought is known without what it corrects, where the store lacked that.
    (known.replaces === attempt.replaces || known.replaces === null) &&
    JSON.stringify(known.seen) === JSON.stringify(attempt.seen);
  if (!same) throw new Refusal("conflict", sentence("record.otherAttempt"));
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
  const { mark } = deriveMark(db, attempt.dayId, attempt.athleteId, attempt.test, attempt.variant);
  return mark?.mark ?? null;
}
