/** Returns the age in whole years that somebody born in this year reaches in the year of `date` (ISO 8601 day). */
export function ageReached(birthYear: number, date: string): number {
  return Number(date.slice(0, 4)) - birthYear;
}

/**
 * True if somebody may be under 18 on `date`. Only the year of birth is stored, so somebody who turns 18 in that year
 * counts as possibly under age: better to ask once too often than once too seldom.
 */
export function mayBeUnder18(birthYear: number | null, date: string): boolean {
  return birthYear !== null && ageReached(birthYear, date) <= 18;
}
