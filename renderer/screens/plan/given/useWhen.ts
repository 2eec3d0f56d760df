import { useTranslation } from "react-i18next";
import type { LeagueTime } from "../types.ts";

/** Returns the sayer of when a league comes: "at 09:20", "09:00–10:30". */
export function useWhen(): (time: Pick<LeagueTime, "from" | "until">) => string {
  const { t } = useTranslation("plan");
  return ({ from, until }) =>
    from === until ? t("leagues.at", { from }) : t("leagues.within", { from, until });
}
