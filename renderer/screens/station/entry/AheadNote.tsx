import { useTranslation } from "react-i18next";
import type { Ahead } from "./ahead.ts";

/** Says which bib was typed ahead, and that nothing after it is kept. */
export function AheadNote({ ahead: { bib, more } }: { readonly ahead: Ahead }) {
  const { t } = useTranslation("station");
  if (bib === "") return null;
  return (
    <p>
      <strong>{t("ask.ahead", { bib })}</strong> {t(more ? "ask.notKept" : "ask.kept")}
    </p>
  );
}
