import { useTranslation } from "react-i18next";
import type { Distance } from "../../electron/domain/day/dates.ts";
import { localeOf } from "../../electron/domain/languages.ts";

/** The formats of dates and times. A calendar day has no time zone: it is written as it is. */
const ways = {
  date: { weekday: "long", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" },
  day: { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" },
  month: { month: "short", year: "numeric", timeZone: "UTC" },
  year: { year: "numeric", timeZone: "UTC" },
  time: { hour: "2-digit", minute: "2-digit" },
  dayHere: { dateStyle: "medium" },
  moment: { dateStyle: "medium", timeStyle: "short" },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

/** Formats made in the last second. To make one takes longer than to draw the row that it is for. */
const made = { at: Number.NaN, formats: new Map<string, Intl.DateTimeFormat>() };

/**
 * Returns the format of one way to write a date or time. It has the computer's current time zone: don't store it for
 * longer than a second.
 */
export function dateFormat(way: keyof typeof ways, language: string): Intl.DateTimeFormat {
  const now = Date.now();
  if (!(Math.abs(now - made.at) < 1_000)) Object.assign(made, { at: now, formats: new Map() });
  const name = `${way} ${language}`;
  const format = made.formats.get(name) ?? new Intl.DateTimeFormat(localeOf(language), ways[way]);
  made.formats.set(name, format);
  return format;
}

/** Returns a writer of dates in one format; text that is no date stays as it is. */
function writer(way: keyof typeof ways, language: string): (at: string) => string {
  const format = dateFormat(way, language);
  return (at) => {
    const instant = new Date(at.includes("T") ? at : `${at}T00:00:00Z`);
    return Number.isNaN(instant.getTime()) ? at : format.format(instant);
  };
}

/** Writes how far a date lies from today: "in 10 years", "3 months ago". */
export function writeDistance({ amount, unit }: Distance, language: string): string {
  return new Intl.RelativeTimeFormat(localeOf(language), { numeric: "always" }).format(amount, unit);
}

/** A calendar day (`YYYY-MM-DD`) as people write it: "Saturday 14 November 2026". */
export function writeDate(date: string, language: string): string {
  return writer("date", language)(date);
}

/** Formats the local time of an instant (ISO 8601): "14:05". */
export function writeTime(instant: string, language: string): string {
  return writer("time", language)(instant);
}

/** Formats an instant in local time: "14 Nov 2026, 16:05". */
export function writeMoment(instant: string, language: string): string {
  return writer("moment", language)(instant);
}

/** Returns `writeTime` in the current language. */
export function useWriteTime(): (instant: string) => string {
  return writer("time", useTranslation().i18n.language);
}

/** Returns a writer of short calendar days in the current language: "14 Nov 2026". */
export function useWriteDay(): (date: string) => string {
  return writer("day", useTranslation().i18n.language);
}

/** Returns a writer of a span of calendar days in the current language: "17 Feb – 24 Mar 2027". */
export function useWriteSpan(): (from: string, until: string) => string {
  const format = dateFormat("day", useTranslation().i18n.language);
  return (from, until) => format.formatRange(new Date(`${from}T00:00:00Z`), new Date(`${until}T00:00:00Z`));
}

/** Returns an instant's local calendar day as `YYYY-MM-DD`: Swedish dates have the form of ISO 8601. */
export function dateHere(at = new Date()): string {
  return at.toLocaleDateString("sv-SE");
}
