import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { Calls } from "./Calls.tsx";
import css from "./FloorScene.module.css";

/** Shows the whole floor: the totals of the athletes shown, and each station's calls, by name where that was agreed. */
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
