/** Two calendar days (ISO 8601), the first not after the second. */
export interface TestingWindow {
  readonly from: string;
  readonly until: string;
}

/** Weeks from one test to the next: three or four times a year (PROTOCOLS). Common practice, no published source. */
export const windowWeeks = Object.freeze({ from: 12, until: 17 });

/** Returns the dates between which the next test is worth taking: the same weekday, 12 to 17 weeks after this one. */
export function nextWindow(date: string): TestingWindow {
  return { from: weeksAfter(date, windowWeeks.from), until: weeksAfter(date, windowWeeks.until) };
}

/** Adds weeks to a date. Without a time zone, so that no clock change moves a day. */
function weeksAfter(date: string, weeks: number): string {
  const day = new Date(`${date}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() + 7 * weeks);
  return day.toISOString().slice(0, 10);
}
