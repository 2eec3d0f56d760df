import { useState } from "react";
import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/protocols/protocol.ts";
import { bridge } from "../../app/bridge.ts";
import { tell } from "../../app/messages.ts";
import type { Paper, Which } from "./sheets.ts";

/** Printing and saving what is chosen; what came of it stands in the message strip. */
export function usePaperwork(which: Which, paper: Paper, date: string) {
  const suggestedName = useFileName(which, paper, date);
  const [busy, setBusy] = useState(false);
  const path = `/print/instructions/${which}`;

  async function run(work: () => Promise<void>): Promise<void> {
    setBusy(true);
    try {
      await work();
    } finally {
      setBusy(false);
    }
  }
  async function print(): Promise<void> {
    const outcome = await bridge?.print({ path, paper });
    if (outcome === undefined) return tell({ tone: "alert", sentence: { key: "instructions:noBridge" } });
    if (outcome.printed) return tell({ tone: "done", sentence: { key: "instructions:print.done" } });
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `instructions:print.${outcome.why}` } });
  }
  async function save(): Promise<void> {
    const outcome = await bridge?.savePdf({ path, paper, suggestedName });
    if (outcome === undefined) return tell({ tone: "alert", sentence: { key: "instructions:noBridge" } });
    if (outcome.saved) {
      const values = { name: outcome.name };
      return tell({ tone: "done", sentence: { key: "instructions:save.saved", values } });
    }
    const tone = outcome.why === "cancelled" ? "note" : "alert";
    tell({ tone, sentence: { key: `instructions:save.${outcome.why}` } });
  }
  return { busy, print: () => void run(print), save: () => void run(save) };
}

function useFileName(which: Which, paper: Paper, date: string): string {
  const { t } = useTranslation(["instructions", "common"]);
  const values = { date, paper: t(`paper.${paper}`) };
  if (which === "all" || which === "athlete") return t(`file.${which}`, values);
  const test = t(`common:test.${which}.name`);
  return t("file.station", { ...values, number: testCodes.indexOf(which) + 1, test });
}
