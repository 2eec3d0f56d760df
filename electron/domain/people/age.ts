/** The age in whole years that somebody of this year of birth reaches in the year of `date` (ISO 8601 day). */
export function ageReached(birthYear: number, date: string): number {
  return Number(date.slice(0, 4)) - birthYear;
}

/**
 * Whether somebody may be under 18 on `date`. Only the year of birth is held, so whoever turns 18 in that year counts
 * as possibly under age: the question is asked once too often rather than once too seldom.
 */
export function mayBeUnder18(birthYear: number | null, date: string): boolean {
  return birthYear !== null && ageReached(birthYear, date) <= 18;
}
