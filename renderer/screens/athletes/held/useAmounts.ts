import { useTranslation } from "react-i18next";
import type { Before } from "./types.ts";

/** Formats the amounts of data held: "2 days", "9 attempts", "3 marks from sheets". */
export function useAmounts({ days, attempts, pastMarks }: Before) {
  const { t } = useTranslation("held");
  return {
    days: t("held.days", { count: days }),
    attempts: t("held.attempts", { count: attempts }),
    past: t("held.past", { count: pastMarks }),
  };
}
