import { useTranslation } from "react-i18next";
import css from "./HeldBack.module.css";
import type { Preview } from "./preview.ts";

/** What stays, reason by reason: how much, why, and what can be done about it. */
export function HeldBack({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  if (bundle.held.length === 0) return <p>{t("stays.nothing")}</p>;
  return (
    <ul className={css.reasons}>
      {bundle.held.map(({ reason, marks, athletes }) => (
        <li key={reason}>
          <span className={css.number}>{marks}</span>
          <div>
            <p className={css.who}>
              {t("stays.of", { count: marks, athletes: t("count.athletes", { count: athletes }) })}
            </p>
            <p>{t(`stays.${reason}.why`, { k: bundle.k, two: 2 * bundle.k })}</p>
            <p className={css.do}>{t(`stays.${reason}.do`)}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}
