/** Returns the calendar day of an instant in the hall's own time zone, ISO 8601. */
export function isoDate(instant: Date): string {
  const pad = (value: number) => String(value).padStart(2, "0");
  return `${instant.getFullYear()}-${pad(instant.getMonth() + 1)}-${pad(instant.getDate())}`;
}

/** Returns the instant of a time of day ("09:05") on a calendar day, both of the hall's own time zone (ISO 8601). */
export function isoAt(date: string, clock: string): string {
  return new Date(`${date}T${clock}:00`).toISOString();
}

/** Returns the instant so many seconds after another (ISO 8601). */
export function secondsLater(instant: string, seconds: number): string {
  return new Date(Date.parse(instant) + seconds * 1000).toISOString();
}

/** Returns the time of day of an instant in the hall's own time zone, as "09:05". */
export function clockOf(instant: string): string {
  const pad = (value: number) => String(value).padStart(2, "0");
  const at = new Date(instant);
  return `${pad(at.getHours())}:${pad(at.getMinutes())}`;
}

/** Returns the calendar day `days` days before another (both ISO 8601). */
export function daysBefore(date: string, days: number): string {
  const day = new Date(`${date}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() - days);
  return day.toISOString().slice(0, 10);
}
