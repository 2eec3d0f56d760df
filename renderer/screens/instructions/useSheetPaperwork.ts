import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/protocols/protocol.ts";
import { usePaperwork } from "../../app/paperwork.ts";
import type { Paper, Which } from "./sheets.ts";

/** Printing and saving the sheets that are chosen. */
export function useSheetPaperwork(which: Which, paper: Paper, date: string) {
  const suggestedName = useFileName(which, paper, date);
  return usePaperwork("instructions", { path: `/print/instructions/${which}`, paper, suggestedName });
}

function useFileName(which: Which, paper: Paper, date: string): string {
  const { t } = useTranslation(["instructions", "common"]);
  const values = { date, paper: t(`paper.${paper}`) };
  if (which === "all" || which === "athlete") return t(`file.${which}`, values);
  const test = t(`common:test.${which}.name`);
  return t("file.station", { ...values, number: testCodes.indexOf(which) + 1, test });
}
