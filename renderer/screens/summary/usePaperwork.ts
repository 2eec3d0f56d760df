import { useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../app/bridge.ts";
import { tell } from "../../app/messages.ts";
import type { Paper } from "./paper/papers.ts";
import { printPathOf } from "./paths.ts";
import type { Summary } from "./summary.ts";

/** Printing and saving a summary; what came of it stands in the message strip. */
export function usePaperwork(summary: Summary, paper: Paper) {
  const suggestedName = useFileName(summary, paper);
  const [busy, setBusy] = useState(false);
  const page = { path: printPathOf(summary.day.id, summary.league?.id ?? null), paper };

  async function run(work: () => Promise<void>): Promise<void> {
    setBusy(true);
    try {
      await work();
    } finally {
      setBusy(false);
    }
  }
  async function print(): Promise<void> {
    const outcome = await bridge?.print(page);
    if (outcome === undefined) return tell({ tone: "alert", sentence: { key: "summary:noBridge" } });
    if (outcome.printed) return tell({ tone: "done", sentence: { key: "summary:print.done" } });
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `summary:print.${outcome.why}` } });
  }
  async function save(): Promise<void> {
    const outcome = await bridge?.savePdf({ ...page, suggestedName });
    if (outcome === undefined) return tell({ tone: "alert", sentence: { key: "summary:noBridge" } });
    if (outcome.saved) {
      return tell({ tone: "done", sentence: { key: "summary:save.saved", values: { name: outcome.name } } });
    }
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `summary:save.${outcome.why}` } });
  }
  return { busy, print: () => void run(print), save: () => void run(save) };
}

/** A league's name may hold what no file's name may. */
function useFileName({ day, league }: Summary, paper: Paper): string {
  const { t } = useTranslation("summary");
  const name = league === null ? t("which.all") : league.name.replace(/[\p{Cc}\\/:*?"<>|]+/gu, " ");
  const whose = [...name.trim()].slice(0, 40).join("");
  return t("file", { date: day.date, whose, paper: t(`which.${paper}`) });
}
