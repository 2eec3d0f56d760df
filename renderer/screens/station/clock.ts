import { useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { localeOf } from "../../../electron/domain/languages.ts";

/** Now, again every fifteen seconds: for "rests until". */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 15_000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

/** Writes an instant as the hall's own clock shows it: 10:04. */
export function useWriteTime(): (instant: string) => string {
  const { i18n } = useTranslation();
  const language = localeOf(i18n.language);
  const format = new Intl.DateTimeFormat(language, { hour: "2-digit", minute: "2-digit" });
  return (instant) => format.format(new Date(instant));
}

/** Writes a calendar day short: 14 Nov 2026. */
export function useWriteDay(): (date: string) => string {
  const { i18n } = useTranslation();
  const language = localeOf(i18n.language);
  const options = { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" } as const;
  const format = new Intl.DateTimeFormat(language, options);
  return (date) => format.format(new Date(`${date}T00:00:00Z`));
}
