import { heldOn } from "../../domain/day/dates.ts";
import { admit } from "../../domain/people/attendance.ts";
import { fold } from "../../domain/people/fold.ts";
import { checkBirthYear, checkIdentity, type TypedIdentity } from "../../domain/people/identity.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import {
  type Athlete,
  addAthlete,
  athleteById,
  athleteByIdentity,
  leagueNamed,
  updateAthlete,
} from "../../store/tables/athletes.ts";
import { attemptsOfAthlete } from "../../store/tables/attempts.ts";
import { endCall, endCallTo } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import {
  entrantByBib,
  entrantOf,
  nextFreeBib,
  setEntrant,
  setReadiness,
} from "../../store/tables/entrants.ts";
import { isoDate } from "../door/calendar.ts";
import { requireAthlete } from "../people/person.ts";
import type { CheckInOutcome } from "./inputs.ts";

/** The result of a check-in. */
export interface Admitted {
  readonly athleteId: number;
  readonly name: string;
  readonly state: "testing" | "not-testing";
  readonly bib: number | null;
}

/** True if an athlete has standing attempts today. */
export function hasAttempts(db: ReadableDb, day: Day, athleteId: number): boolean {
  return attemptsOfAthlete(db, day.id, athleteId).some((attempt) => attempt.void === null);
}

/**
 * Checks an athlete in, or changes the decisions; doing it twice changes nothing. Part of the caller's transaction.
 * @throws Refusal for an unknown athlete, a bib in use, or a missing guardian's consent.
 */
export function admitAthlete(
  db: WritableDb,
  day: Day,
  athleteId: number,
  given: CheckInOutcome,
  at: string,
): Admitted {
  const athlete = requireAthlete(db, athleteId);
  const answered = answeredBy(athlete, given);
  const date = heldOn(day, isoDate(new Date(at)));
  checkBirthYear(given.birthYear ?? null, date);
  const state = admit({
    ...answered,
    leaveOut: given.leaveOut,
    date,
    hasAttempts: hasAttempts(db, day, athleteId),
  });
  if (state === "testing" && !wasAsked(given)) throw new Refusal("bad-input", sentence("checkIn.consents"));
  const before = entrantOf(db, day.id, athleteId);
  const bib = state === "testing" ? chooseBib(db, day, athleteId, given.bib ?? before?.bib ?? null) : null;
  updateAthlete(db, athleteId, answered);
  setEntrant(db, day.id, { athleteId, state, bib, since: before?.state === state ? before.since : at });
  const tests = state === "testing" ? given.leaveOut : [];
  setReadiness(db, day.id, athleteId, { tests, decidedBy: given.by, at });
  if (state !== "testing") endCall(db, day.id, athleteId);
  for (const test of tests) endCallTo(db, day.id, athleteId, test);
  return { athleteId, name: athlete.name, state, bib };
}

function answeredBy(athlete: Athlete, given: CheckInOutcome): Athlete {
  return {
    ...athlete,
    board: given.board ?? athlete.board,
    share: given.share ?? athlete.share,
    guardianConsent: given.guardianConsent,
    birthYear: given.birthYear ?? athlete.birthYear,
    category: given.category ?? athlete.category,
    asked: athlete.asked || wasAsked(given),
  };
}

/** True if both consents were asked for. */
function wasAsked({ board, share }: CheckInOutcome): boolean {
  return board !== null && share !== null;
}

/** Returns the wanted bib if it is free, or the next free one when none is wanted. */
function chooseBib(db: ReadableDb, day: Day, athleteId: number, wanted: number | null): number {
  if (wanted === null) return nextFreeBib(db, day.id);
  if (!Number.isInteger(wanted) || wanted < 1 || wanted > 9999) {
    throw new Refusal("bad-input", sentence("checkIn.badBib"));
  }
  const holder = entrantByBib(db, day.id, wanted);
  if (holder === undefined || holder.athleteId === athleteId) return wanted;
  const name = athleteById(db, holder.athleteId)?.name ?? "";
  throw new Refusal(
    "conflict",
    sentence("checkIn.bibTaken", { bib: wanted, name, free: nextFreeBib(db, day.id) }),
  );
}

/**
 * The athlete that a walk-up is: found by league and number (or name), or added. Part of the caller's transaction.
 * @param date the calendar day on which they stand there (ISO 8601)
 * @throws Refusal `bad-input` for what can't be read, `conflict` when the number belongs to another name of the league.
 */
export function walkUpAthlete(db: WritableDb, typed: TypedIdentity, date: string): number {
  const { league, name, number, birthYear } = checkIdentity(typed, date);
  const found = athleteByIdentity(db, league, number, name);
  if (found !== undefined) {
    if (fold(found.name) === fold(name)) return found.id;
    throw new Refusal("conflict", sentence("checkIn.numberTaken", { number, league, name: found.name }));
  }
  // The admission that follows sets the answers.
  const unasked = {
    category: null,
    guardianConsent: false,
    board: "bib",
    share: false,
    asked: false,
  } as const;
  return addAthlete(db, { leagueId: leagueNamed(db, league), name, number, birthYear, ...unasked });
}
