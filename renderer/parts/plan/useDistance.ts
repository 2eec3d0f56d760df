import { useTranslation } from "react-i18next";
import { farFrom } from "../../../electron/domain/day/dates.ts";
import { writeDistance } from "../../words/dates.ts";

/** Formats the distance of a date from today ("in 10 years"); null for a near one (both ISO 8601). */
export function useDistance(date: string, today: string): string | null {
  const { i18n } = useTranslation();
  const far = date === "" ? null : farFrom(date, today);
  return far === null ? null : writeDistance(far, i18n.language);
}
