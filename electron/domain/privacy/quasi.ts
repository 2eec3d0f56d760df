import { ageReached } from "../people/age.ts";

/** How an athlete wants to be compared, as it may leave the room. */
export type SharedCategory = "women" | "men" | "open" | "unknown";

/**
 * What somebody else may know of an athlete and could look for in a bundle (quasi-identifiers), already generalised.
 * The size of the league is for a later rule; the league itself never leaves.
 */
export interface Quasi {
  /** `25 to 29`, or `unknown`. Written in words so that no spreadsheet takes `10-14` for a date. */
  readonly ageBand: string;
  readonly category: SharedCategory;
  /** The way of doing the test; empty where there is only one. */
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

/** The quasi-identifiers of one mark: everything beside the test and the mark that a bundle says about a row. */
export function quasiOf(
  athlete: { readonly birthYear: number | null; readonly category: "women" | "men" | "open" | null },
  variant: string,
  date: string,
): Quasi {
  return {
    ageBand: ageBandOf(athlete.birthYear, date),
    category: athlete.category ?? "unknown",
    variant,
    quarter: quarterOf(date),
  };
}
