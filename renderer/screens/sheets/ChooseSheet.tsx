import { useTranslation } from "react-i18next";
import { FileZone } from "../../parts/FileZone.tsx";
import css from "./ChooseSheet.module.css";
import { Examples } from "./Examples.tsx";
import type { SheetInHand } from "./useSheet.ts";

const readable = ".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain";

/** Where a sheet is chosen or dropped, and what the three kinds look like. */
export function ChooseSheet({ sheet }: { readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  return (
    <div className={css.choose}>
      <FileZone
        size="large"
        title={t("choose.drop")}
        button={t("choose.button")}
        note={t("choose.note")}
        accept={readable}
        onFile={(name, content) => sheet.bring({ name, content })}
        onRefused={(name, why) =>
          sheet.refuse(name, why === "too-big" ? "sheets.tooBig" : "sheets:choose.unreadable")
        }
      />
      <Examples />
    </div>
  );
}
