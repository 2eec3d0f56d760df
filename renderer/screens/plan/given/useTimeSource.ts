import { useTranslation } from "react-i18next";
import type { PlannedStation } from "../types.ts";

/** Returns the sayer of where a time comes from: "from 312 turns of your earlier days". */
export function useTimeSource(): (time: PlannedStation["turn"]) => string {
  const { t } = useTranslation("plan");
  return ({ from, turns }) => t(`source.${from}`, { count: turns });
}
