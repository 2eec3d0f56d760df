import { Refusal } from "../refusal.ts";
import { sentence } from "../words.ts";

/** No year of birth outside of these is kept, whatever the date of a day says. */
export const earliestBirthYear = 1900;
export const latestBirthYear = 2100;

/** Who somebody is, as typed at the table. */
export interface TypedIdentity {
  readonly league: string;
  readonly name: string;
  readonly number: string;
  readonly birthYear: number | null;
}

/**
 * Takes what was typed about somebody, or says what to type instead.
 * @throws Refusal `bad-input` for a missing name or league, a number that is not 0 to 4 digits, or a year of birth that
 * nobody here can have (`date`: the day, ISO 8601).
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

/** @throws Refusal `bad-input` for a year of birth that nobody here can have. */
export function checkBirthYear(birthYear: number | null, date: string): void {
  if (birthYear === null) return;
  const year = Number(date.slice(0, 4));
  const earliest = Math.max(year - 100, earliestBirthYear);
  const latest = Math.min(year - 4, latestBirthYear);
  if (birthYear < earliest || birthYear > latest) {
    throw new Refusal("bad-input", sentence("checkIn.badBirthYear", { year: birthYear }));
  }
}
