import { Refusal } from "../refusal.ts";
import { sentence } from "../words.ts";

/** Years of birth outside these are refused, whatever the date of a day. */
export const earliestBirthYear = 1900;
export const latestBirthYear = 2100;

/** An athlete's identity as typed at the table. */
export interface TypedIdentity {
  readonly league: string;
  readonly name: string;
  readonly number: string;
  readonly birthYear: number | null;
}

/**
 * Returns the typed identity, trimmed and checked.
 * @throws Refusal `bad-input` for a missing name or league, a number that is not 0 to 4 digits, or an impossible year
 * of birth (`date`: the day, ISO 8601). Each says what to type instead.
 */
export function checkIdentity(typed: TypedIdentity, date: string): TypedIdentity {
  const league = typed.league.trim();
  const name = typed.name.trim();
  const number = typed.number.trim();
  if (name === "") throw new Refusal("bad-input", sentence("checkIn.nameMissing"));
  if (league === "") throw new Refusal("bad-input", sentence("checkIn.leagueMissing"));
  if (!/^\d{0,4}$/.test(number)) throw new Refusal("bad-input", sentence("checkIn.badNumber"));
  checkBirthYear(typed.birthYear, date);
  return { league, name, number, birthYear: typed.birthYear };
}

/** @throws Refusal `bad-input` for an impossible year of birth. */
export function checkBirthYear(birthYear: number | null, date: string): void {
  if (birthYear === null) return;
  const year = Number(date.slice(0, 4));
  const earliest = Math.max(year - 100, earliestBirthYear);
  const latest = Math.min(year - 4, latestBirthYear);
  if (birthYear < earliest || birthYear > latest) {
    throw new Refusal("bad-input", sentence("checkIn.badBirthYear", { year: birthYear }));
  }
}
