import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import type { Which } from "./sheets.ts";

/** What a sheet is called in lists. */
export function useSheetTitle(): (which: Which) => string {
  const { t } = useTranslation(["instructions", "common"]);
  return (which) => {
    if (which === "all" || which === "athlete") return t(`sheet.${which}`);
    return t("sheet.station", {
      number: testCodes.indexOf(which) + 1,
      test: t(`common:test.${which}.name`),
    });
  };
}
