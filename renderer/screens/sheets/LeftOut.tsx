import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { LineList } from "../../parts/sheets/LineList.tsx";
import type { Preview } from "../../parts/sheets/sheet.ts";
import type { SheetInHand } from "./useSheet.ts";

/** Lists the rows that somebody chose not to import, each with a button that undoes it. */
export function LeftOut({ rows, sheet }: { readonly rows: Preview["leftOut"]; readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const lines = rows.map(({ line, text }) => ({
    line,
    says: (
      <Button label={t("leftOut.backOf", { line })} onPress={() => sheet.bringBack(line)}>
        {t("leftOut.back")}
      </Button>
    ),
    stands: text,
  }));
  return (
    <LineList title={t("leftOut.title", { count: rows.length })} lead={t("leftOut.lead")} lines={lines} />
  );
}
