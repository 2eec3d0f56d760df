import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { writeNumber } from "../../app/numbers.ts";
import css from "./LeagueTotals.module.css";

/** Leagues by name: how many bests an athlete of theirs made so far, whatever the size of the league. */
export function LeagueTotals({ leagues }: { readonly leagues: Board["totals"]["leagues"] }) {
  const { t, i18n } = useTranslation("board");
  const options = { minimumFractionDigits: 1, maximumFractionDigits: 1 };
  return (
    <div className={css.leagues}>
      <h2 className={css.title}>{t("leagues.title")}</h2>
      {leagues.length === 0 && <p className={css.none}>{t("leagues.none")}</p>}
      <ul className={css.list} data-many={leagues.length > 3}>
        {leagues.map(({ league, athletes, bests }) => (
          <li key={league}>
            <strong>{writeNumber(bests / athletes, i18n.language, options)}</strong>
            <span className={css.name}>{league}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
