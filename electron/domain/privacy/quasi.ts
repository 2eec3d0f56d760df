import { ageReached } from "../people/age.ts";

/** How an athlete wants to be compared, as it may leave the room. */
export type SharedCategory = "women" | "men" | "open" | "unknown";

/** How many athletes an athlete's league has; unknown of those whose name was erased. The league itself never leaves. */
export const leagueSizes = ["up to 14", "15 to 29", "30 and more", "unknown"] as const;
export type LeagueSize = (typeof leagueSizes)[number];

/** What somebody else may know of an athlete beside the marks, and could look for in a bundle (quasi-identifiers). */
export interface Quasi {
  /** `25 to 29`, or `unknown`. Written in words so that no spreadsheet takes `10-14` for a date. */
  readonly ageBand: string;
  readonly category: SharedCategory;
  readonly leagueSize: LeagueSize;
  /** The way of doing the test; empty where there is only one. Always told: marks of different variants never compare. */
  readonly variant: string;
  /** `2026-Q4` */
  readonly quarter: string;
}

const bandYears = 5;

/** The fixed band of five years that holds the age reached in the day's year. Bands never change between bundles. */
export function ageBandOf(birthYear: number | null, date: string): string {
  const age = birthYear === null ? -1 : ageReached(birthYear, date);
  if (age < 0) return "unknown";
  const from = Math.floor(age / bandYears) * bandYears;
  return `${from} to ${from + bandYears - 1}`;
}

/** The quarter of the calendar year that holds a day (ISO 8601). */
export function quarterOf(date: string): string {
  return `${date.slice(0, 4)}-Q${Math.ceil(Number(date.slice(5, 7)) / 3)}`;
}

/** The fixed size band of a league with so many athletes. */
export function leagueSizeOf(athletes: number): LeagueSize {
  if (athletes < 15) return "up to 14";
  return athletes < 30 ? "15 to 29" : "30 and more";
}

interface Described {
  readonly birthYear: number | null;
  readonly category: "women" | "men" | "open" | null;
  /** Athletes of the same league. */
  readonly leagueAthletes: number;
}

/** The quasi-identifiers of one mark: everything beside the test and the mark that could be said about it. */
export function quasiOf(athlete: Described, variant: string, date: string): Quasi {
  return {
    ageBand: ageBandOf(athlete.birthYear, date),
    category: athlete.category ?? "unknown",
    leagueSize: leagueSizeOf(athlete.leagueAthletes),
    variant,
    quarter: quarterOf(date),
  };
}
