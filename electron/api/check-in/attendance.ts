import type { z } from "zod";
import { heldOn } from "../../domain/day/dates.ts";
import { mayBeUnder18 } from "../../domain/people/age.ts";
import { freeBibs, mayBeNoShow, mayUndo } from "../../domain/people/attendance.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { athleteById, updateAthlete } from "../../store/tables/athletes.ts";
import { endCall } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import {
  type Entrant,
  type EntrantState,
  entrantOf,
  entrants,
  setEntrant,
  setReadiness,
} from "../../store/tables/entrants.ts";
import { isoDate } from "../door/calendar.ts";
import { requireAthlete } from "../people/person.ts";
import { hasAttempts } from "./admission.ts";
import type { undoInput } from "./inputs.ts";

/** @throws Refusal `not-found` for an athlete who is not on the day's list. */
function requireEntrant(db: ReadableDb, day: Day, athleteId: number): Entrant & { readonly name: string } {
  const { name } = requireAthlete(db, athleteId);
  const entrant = entrantOf(db, day.id, athleteId);
  if (entrant === undefined) throw new Refusal("not-found", sentence("checkIn.notListed", { name }));
  return { ...entrant, name };
}

function change(
  db: WritableDb,
  day: Day,
  entrant: Entrant,
  state: EntrantState,
  bib: number | null,
  at: string,
) {
  if (entrant.state === state) return;
  setEntrant(db, day.id, { athleteId: entrant.athleteId, state, bib, since: at });
  endCall(db, day.id, entrant.athleteId);
}

/** Marks an athlete as a no-show. Part of the caller's transaction. */
export function markNoShow(db: WritableDb, day: Day, athleteId: number, at: string): void {
  const entrant = requireEntrant(db, day, athleteId);
  mayBeNoShow(entrant.name, entrant.state);
  change(db, day, entrant, "no-show", null, at);
}

/** Withdraws an athlete for today: attempts and bib stay, no reason is kept. Part of the caller's transaction. */
export function withdrawAthlete(db: WritableDb, day: Day, athleteId: number, at: string): void {
  const entrant = requireEntrant(db, day, athleteId);
  change(db, day, entrant, "withdrawn", entrant.bib, at);
}

/**
 * Undoes the last step: an athlete who withdrew with a bib tests again; everybody else is expected again, without a
 * bib, with the given earlier facts. Part of the caller's transaction.
 * @throws Refusal `conflict` when it would undo the check-in of an athlete with attempts.
 */
export function undoLast(
  db: WritableDb,
  day: Day,
  input: z.infer<typeof undoInput>,
  at: string,
): EntrantState {
  const entrant = requireEntrant(db, day, input.athleteId);
  if (entrant.state === "withdrawn" && entrant.bib !== null) {
    change(db, day, entrant, "testing", entrant.bib, at);
    return "testing";
  }
  mayUndo(entrant.name, hasAttempts(db, day, input.athleteId));
  setReadiness(db, day.id, input.athleteId, { tests: [], decidedBy: "", at });
  if (input.before !== undefined && input.before !== null) {
    updateAthlete(db, input.athleteId, { ...requireAthlete(db, input.athleteId), ...input.before });
  }
  change(db, day, entrant, "expected", null, at);
  return "expected";
}

/** An athlete who may be under 18 and has no guardian's consent, for the caller to report. */
export interface AskGuardian {
  readonly athleteId: number;
  readonly name: string;
  readonly league: string;
  readonly number: string;
}

/**
 * Checks in everybody who is expected, in the list's order, with the next free bibs; nobody is asked anything. Part of
 * the caller's transaction.
 * @throws Refusal `conflict` when there are more people than bibs.
 */
export function admitExpected(
  db: WritableDb,
  day: Day,
  at: string,
): { admitted: number; askGuardian: AskGuardian[] } {
  const all = entrants(db, day.id);
  const expected = all.filter((entrant) => entrant.state === "expected");
  const bibs = freeBibs(
    all.flatMap(({ bib }) => bib ?? []),
    expected.length,
  );
  if ((bibs.at(-1) ?? 0) > 9999) throw new Refusal("conflict", sentence("checkIn.noBibs"));
  const askGuardian: AskGuardian[] = [];
  const date = heldOn(day, isoDate(new Date(at)));
  for (const [index, { athleteId }] of expected.entries()) {
    setEntrant(db, day.id, { athleteId, state: "testing", bib: bibs[index] ?? null, since: at });
    const athlete = athleteById(db, athleteId);
    if (athlete !== undefined && mayBeUnder18(athlete.birthYear, date) && !athlete.guardianConsent) {
      askGuardian.push({ athleteId, name: athlete.name, league: athlete.league, number: athlete.number });
    }
  }
  return { admitted: expected.length, askGuardian };
}
