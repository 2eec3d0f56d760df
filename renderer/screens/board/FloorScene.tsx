import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { writeNumber } from "../../app/numbers.ts";
import { Calls } from "./Calls.tsx";
import css from "./FloorScene.module.css";

/** The floor as a whole: what those who are shown have done so far, and who is called where, by name where that was agreed. */
export function FloorScene({ calls, totals }: Pick<Board, "calls" | "totals">) {
  const { t } = useTranslation("board");
  const { bests, testsDone, athletesTested } = totals;
  return (
    <div className={css.floor}>
      <section className={css.totals}>
        <p className={css.bests}>
          <strong>{bests}</strong> <span>{t("totals.bests", { count: bests })}</span>
        </p>
        <div className={css.pair}>
          <p>
            <strong>{testsDone}</strong> {t("totals.tests", { count: testsDone })}
          </p>
          <p>
            <strong>{athletesTested}</strong> {t("totals.athletes", { count: athletesTested })}
          </p>
        </div>
      </section>
      <Calls calls={calls} />
    </div>
  );
}

/** Leagues by name: how many bests an athlete of theirs made so far, whatever the size of the league. */
function LeagueTotals({ leagues }: { readonly leagues: Board["totals"]["leagues"] }) {
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
