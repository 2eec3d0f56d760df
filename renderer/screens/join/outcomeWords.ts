import { useTranslation } from "react-i18next";
import type { AskedTable } from "./asking.ts";

/** Returns what to say of a try to join; null where it went well. */
export function useOutcomeWords(example: string): (asked: AskedTable) => string | null {
  const { t } = useTranslation(["atTable", "join"]);
  return (asked) => {
    switch (asked.outcome) {
      case "asked":
        return null;
      case "shut":
        return t("join:trouble.shut", { count: Math.ceil(asked.waitMs / 1_000) });
      case "wrong":
      case "closed":
      case "full":
      case "unreadable":
      case "away":
        return t(`join:trouble.${asked.outcome}`);
      default:
        return t(`trouble.${asked.outcome}`, { example });
    }
  };
}
