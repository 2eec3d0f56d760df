import { useTranslation } from "react-i18next";
import { farFrom } from "../../../electron/domain/day/dates.ts";
import { writeDistance } from "../../words/dates.ts";

/** How far a date lies from today in words ("in 10 years"); null for one that is near (both ISO 8601). */
export function useDistance(date: string, today: string): string | null {
  const { i18n } = useTranslation();
  const far = date === "" ? null : farFrom(date, today);
  return far === null ? null : writeDistance(far, i18n.language);
}
