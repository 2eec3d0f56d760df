import { useTranslation } from "react-i18next";
import { usePaperwork } from "../../app/paperwork.ts";
import type { Paper } from "./paper/papers.ts";
import { printPathOf } from "./paths.ts";
import type { Summary } from "./summary.ts";

/** Printing and saving a summary. */
export function useSummaryPaperwork(summary: Summary, paper: Paper) {
  const suggestedName = useFileName(summary, paper);
  const path = printPathOf(summary.day.id, summary.league?.id ?? null);
  return usePaperwork("summary", { path, paper, suggestedName });
}

/** A league's name may hold what no file's name may. */
function useFileName({ day, league }: Summary, paper: Paper): string {
  const { t } = useTranslation("summary");
  const name = league === null ? t("which.all") : league.name.replace(/[\p{Cc}\\/:*?"<>|]+/gu, " ");
  const whose = [...name.trim()].slice(0, 40).join("");
  return t("file", { date: day.date, whose, paper: t(`which.${paper}`) });
}
