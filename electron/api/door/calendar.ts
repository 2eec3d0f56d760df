import type { Day } from "../../store/tables/days.ts";

/** Returns the calendar day of an instant in the hall's own time zone, ISO 8601. */
export function isoDate(instant: Date): string {
  const pad = (value: number) => String(value).padStart(2, "0");
  return `${instant.getFullYear()}-${pad(instant.getMonth() + 1)}-${pad(instant.getDate())}`;
}

/**
 * Returns the instant (ISO 8601) of a time of day ("09:05") on a day, in the hall's own time zone: on the calendar day on
 * which it was opened, since its date may be another.
 */
export function clockOnDay({ date, openedOn }: Pick<Day, "date" | "openedOn">, clock: string): string {
  return new Date(`${openedOn ?? date}T${clock}:00`).toISOString();
}

/** A time of day on paper is of the last 12 hours: longer than any day (ours, no source). */
const longestAgoMs = 12 * 3_600_000;

/**
 * Returns when the hall's clock last showed a time of day ("09:05"), past midnight too; null where that is more than twelve
 * hours ago, so that it was written wrongly. Instants are ISO 8601.
 */
export function lastClock(clock: string, now: string): string | null {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  const at = new Date(now);
  at.setHours(hours, minutes, 0, 0);
  if (at.getTime() > Date.parse(now)) at.setDate(at.getDate() - 1);
  return Date.parse(now) - at.getTime() > longestAgoMs ? null : at.toISOString();
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
