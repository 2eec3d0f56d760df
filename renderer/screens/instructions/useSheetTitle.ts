import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import type { WhichSheets } from "./sheets.ts";

/** Returns the name of a sheet in lists. */
export function useSheetTitle(): (which: WhichSheets) => string {
  const { t } = useTranslation(["instructions", "common"]);
  const testWord = useTestWords();
  return (which) => {
    if (which === "all" || which === "athlete") return t(`sheet.${which}`);
    return t("sheet.station", {
      number: testCodes.indexOf(which) + 1,
      test: testWord(which, "name"),
    });
  };
}
