import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import css from "./ClosingScene.module.css";
import { useTotals } from "./totals.ts";

/** The end of the day: thanks, what all of those who are shown did together, and until next time. Nobody is named. */
export function ClosingScene({ totals }: Pick<Board, "totals">) {
  const { t } = useTranslation("board");
  const { news, done } = useTotals()(totals);
  const figures = [...news, ...done];
  return (
    <div className={css.closing}>
      <h2 className={css.thanks}>{t("closing.thanks")}</h2>
      <ul className={css.figures} data-count={figures.length}>
        {figures.map(({ number, words }) => (
          <li key={words}>
            <strong>{number}</strong> {words}
          </li>
        ))}
      </ul>
      <p className={`quiet strong ${css.next}`}>{t("closing.next")}</p>
    </div>
  );
}
