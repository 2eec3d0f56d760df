import { useTranslation } from "react-i18next";
import { Choice } from "../../parts/Choice.tsx";
import css from "./SheetHead.module.css";
import { type Kind, kinds, type Standing } from "./sheet.ts";
import type { SheetInHand } from "./useSheet.ts";

/** The file in hand, and what it is read as. */
export function SheetHead({ sheet }: { readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const { standing, name } = sheet;
  const canChange = standing.step === "preview" || standing.step === "refused";
  return (
    <div className={css.head}>
      <p className={css.name}>{name}</p>
      {canChange && sheet.uploadId !== null && (
        <Choice
          label={t("readAs")}
          options={kinds.map((kind) => ({ value: kind, label: t(`kind.${kind}`) }))}
          value={kindOf(standing)}
          onChange={sheet.readAs}
        />
      )}
    </div>
  );
}

function kindOf(standing: Standing): Kind | null {
  return standing.step === "preview" ? standing.preview.kind : null;
}
