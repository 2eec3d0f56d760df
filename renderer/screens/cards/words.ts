import { useTranslation } from "react-i18next";
import { localeOf } from "../../../electron/domain/languages.ts";
import type { CardTest } from "./which.ts";

type Written = CardTest["points"][number]["written"];

/** A mark as a short text with its unit where it needs one: "24 reps", "3:21". */
export function useWriteMark(): (written: Written) => string {
  const { t } = useTranslation("common");
  return ({ number, unit }) => (unit === "" || unit === "min:s" ? number : `${number} ${t(`unit.${unit}`)}`);
}

/** The way in which a test was done; empty where there is only one. */
export function useWay(): (variant: string) => string {
  const { t } = useTranslation("cards");
  return (variant) => (variant === "full" || variant === "knee" ? t(`card.variant.${variant}`) : "");
}

/** Two calendar days as people write a span: "17 Feb – 24 Mar 2027". */
export function useWriteSpan(): (from: string, until: string) => string {
  const { i18n } = useTranslation();
  const language = localeOf(i18n.language);
  const options = { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" } as const;
  const format = new Intl.DateTimeFormat(language, options);
  return (from, until) => format.formatRange(new Date(`${from}T00:00:00Z`), new Date(`${until}T00:00:00Z`));
}
