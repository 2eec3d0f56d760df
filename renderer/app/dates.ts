import { localeOf } from "../../electron/domain/languages.ts";

/** A calendar day (`YYYY-MM-DD`) as people write it: "Saturday 14 November 2026". It has no time zone. */
export function writeDate(date: string, language: string): string {
  const day = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(day.getTime())) return date;
  return new Intl.DateTimeFormat(localeOf(language), {
    weekday: "long",
    day: "numeric",
    month: "long",
    year: "numeric",
    timeZone: "UTC",
  }).format(day);
}

/** The time of day of an instant (ISO 8601) in the hall: "14:05". */
export function writeTime(instant: string, language: string): string {
  const at = new Date(instant);
  if (Number.isNaN(at.getTime())) return instant;
  return new Intl.DateTimeFormat(localeOf(language), { hour: "2-digit", minute: "2-digit" }).format(at);
}

/** Today in the hall as `YYYY-MM-DD`, as a sorted list of files wants it. */
export function dateHere(): string {
  return new Date().toLocaleDateString("sv-SE");
}
