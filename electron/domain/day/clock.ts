const minutesOfDay = 24 * 60;
/** A time of day this much before the beginning belongs to the same day; an earlier one to the next: 6 h (ours, no source). */
const mostBefore = 6 * 60;

/** A time of day on a 24-hour clock, as "09:05". */
export const clockPattern = /^(?:[01]\d|2[0-3]):[0-5]\d$/;

function minutesOf(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return hours * 60 + minutes;
}

/**
 * Returns the seconds from the day's beginning to a time of day, both as "09:05": negative for one shortly before it, and
 * past midnight for one that the clock shows as earlier.
 */
export function secondsAfter(begins: string, clock: string): number {
  const minutes = minutesOf(clock) - minutesOf(begins);
  return (minutes < -mostBefore ? minutes + minutesOfDay : minutes) * 60;
}

/**
 * Returns the time of day, as "09:05", so many seconds after the day's beginning. {@link secondsAfter} reads the same seconds
 * back up to less than eighteen hours after it.
 */
export function clockAfter(begins: string, seconds: number): string {
  const minutes = (minutesOf(begins) + Math.floor(seconds / 60) + minutesOfDay) % minutesOfDay;
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, "0")).join(":");
}

/** Reads a time of day as people write it, "9.05" and "14:05:30" too; null for what is none. */
export function readClock(text: string): string | null {
  const [, hours = "", minutes = ""] = /^(\d{1,2})[:.h](\d{2})(?::\d{2})?$/.exec(text.trim()) ?? [];
  const clock = `${hours.padStart(2, "0")}:${minutes}`;
  return clockPattern.test(clock) ? clock : null;
}
