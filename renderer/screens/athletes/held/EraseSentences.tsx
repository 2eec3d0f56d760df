import { useTranslation } from "react-i18next";
import css from "./Held.module.css";
import type { Before } from "./types.ts";
import { useAmounts } from "./useAmounts.ts";

/** What goes, what stays, what is out of reach, and what would bring it back. */
export function EraseSentences({ before }: { readonly before: Before }) {
  const { t } = useTranslation("held");
  const { nameless, mentions } = before;
  const stays = nameless === 0 ? t("erase.nothing") : t("erase.nameless", { count: nameless });
  return (
    <ul className={css.points}>
      <li>
        {t("erase.goes", useAmounts(before))} {mentions > 0 && t("erase.mentions", { count: mentions })}
      </li>
      <li>{stays}</li>
      <li>{t("erase.reach")}</li>
      <li>{t("erase.back")}</li>
      <li data-weight="alert">{t("erase.never")}</li>
    </ul>
  );
}
