import { ageReached } from "../people/age.ts";

/** The category in which an athlete wants to be compared, as released. */
export type SharedCategory = "women" | "men" | "open" | "unknown";

/** The number of athletes in an athlete's league; unknown for erased athletes. The league itself is never released. */
export const leagueSizes = ["up to 14", "15 to 29", "30 and more", "unknown"] as const;
export type LeagueSize = (typeof leagueSizes)[number];

/** Facts that others may know of an athlete besides the marks, and could look for in a bundle (quasi-identifiers). */
export interface Quasi {
  /** `25 to 29`, or `unknown`. Written in words so that no spreadsheet takes `10-14` for a date. */
  readonly ageBand: string;
  readonly category: SharedCategory;
  readonly leagueSize: LeagueSize;
  /** The variant; empty where there is only one. Always reported: marks of different variants never compare. */
  readonly variant: string;
  /** `2026-Q4` */
  readonly quarter: string;
}

const bandYears = 5;

/** Whole years of age, both included. */
export interface AgeBand {
  readonly from: number;
  readonly to: number;
}

/** Returns the fixed five-year band of the age reached in the day's year; null where the year of birth is not known. */
export function bandOfAges(birthYear: number | null, date: string): AgeBand | null {
  const age = birthYear === null ? -1 : ageReached(birthYear, date);
  if (age < 0) return null;
  const from = Math.floor(age / bandYears) * bandYears;
  return { from, to: from + bandYears - 1 };
}

/** Returns that band in words, or `unknown`. Bands never change between bundles. */
export function ageBandOf(birthYear: number | null, date: string): string {
  return bandInWords(bandOfAges(birthYear, date));
}

/** Returns a band in words: `25 to 29`, or `unknown`. */
export function bandInWords(band: AgeBand | null): string {
  return band === null ? "unknown" : `${band.from} to ${band.to}`;
}

/** Returns the calendar quarter of a day (ISO 8601). */
export function quarterOf(date: string): string {
  return `${date.slice(0, 4)}-Q${Math.ceil(Number(date.slice(5, 7)) / 3)}`;
}

/** Returns the fixed size band of a league with this number of athletes. */
export function leagueSizeOf(athletes: number): LeagueSize {
  if (athletes < 15) return "up to 14";
  return athletes < 30 ? "15 to 29" : "30 and more";
}

interface Described {
  readonly birthYear: number | null;
  readonly category: "women" | "men" | "open" | null;
  /** Number of athletes in the same league. */
  readonly leagueAthletes: number;
}

/** Returns the quasi-identifiers of one mark: everything that could be reported besides the test and the mark. */
export function quasiOf(athlete: Described, variant: string, date: string): Quasi {
  return {
    ageBand: ageBandOf(athlete.birthYear, date),
    category: athlete.category ?? "unknown",
    leagueSize: leagueSizeOf(athlete.leagueAthletes),
    variant,
    quarter: quarterOf(date),
  };
}
