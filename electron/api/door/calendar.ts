/** Returns the calendar day of an instant in the hall's own time zone, ISO 8601. */
export function isoDate(instant: Date): string {
  const pad = (value: number) => String(value).padStart(2, "0");
  return `${instant.getFullYear()}-${pad(instant.getMonth() + 1)}-${pad(instant.getDate())}`;
}

/** Returns the calendar day `days` days before another (both ISO 8601). */
export function daysBefore(date: string, days: number): string {
  const day = new Date(`${date}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() - days);
  return day.toISOString().slice(0, 10);
}
