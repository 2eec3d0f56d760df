import { useTranslation } from "react-i18next";
import { localeOf } from "../../electron/domain/languages.ts";

/** A calendar day has no time zone: it is written as it is. */
const ways = {
  date: { weekday: "long", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" },
  day: { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" },
  month: { month: "short", year: "numeric", timeZone: "UTC" },
  year: { year: "numeric", timeZone: "UTC" },
  time: { hour: "2-digit", minute: "2-digit" },
  dayHere: { dateStyle: "medium" },
  moment: { dateStyle: "medium", timeStyle: "short" },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

/** The format of one way to write a date or a time. It keeps the time zone that the machine has now: don't store it. */
export function dateFormat(way: keyof typeof ways, language: string): Intl.DateTimeFormat {
  return new Intl.DateTimeFormat(localeOf(language), ways[way]);
}

/** Writes many dates in one way; what is no date stays as it is written. */
function writer(way: keyof typeof ways, language: string): (at: string) => string {
  const format = dateFormat(way, language);
  return (at) => {
    const instant = new Date(at.includes("T") ? at : `${at}T00:00:00Z`);
    return Number.isNaN(instant.getTime()) ? at : format.format(instant);
  };
}

/** A calendar day (`YYYY-MM-DD`) as people write it: "Saturday 14 November 2026". */
export function writeDate(date: string, language: string): string {
  return writer("date", language)(date);
}

/** The time of day of an instant (ISO 8601) in the hall: "14:05". */
export function writeTime(instant: string, language: string): string {
  return writer("time", language)(instant);
}

/** An instant in the hall's own time: "14 Nov 2026, 16:05". */
export function writeMoment(instant: string, language: string): string {
  return writer("moment", language)(instant);
}

/** As `writeTime`, in the language of now. */
export function useWriteTime(): (instant: string) => string {
  return writer("time", useTranslation().i18n.language);
}

/** Writes a calendar day short, in the language of now: "14 Nov 2026". */
export function useWriteDay(): (date: string) => string {
  return writer("day", useTranslation().i18n.language);
}

/** Two calendar days as people write a span, in the language of now: "17 Feb – 24 Mar 2027". */
export function useWriteSpan(): (from: string, until: string) => string {
  const format = dateFormat("day", useTranslation().i18n.language);
  return (from, until) => format.formatRange(new Date(`${from}T00:00:00Z`), new Date(`${until}T00:00:00Z`));
}

/** The hall's calendar day of an instant, as `YYYY-MM-DD`: Swedish writes it as ISO 8601 does. */
export function dateHere(at = new Date()): string {
  return at.toLocaleDateString("sv-SE");
}
