import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { TestMark } from "../../parts/TestMark.tsx";
import css from "./FloorScene.module.css";
import { LeagueTotals } from "./LeagueTotals.tsx";
import { roomFor } from "./words.ts";

const calledShown = 3;

/** The floor as a whole: who is called where, by name where that was agreed, and what everybody has done so far. */
export function FloorScene({ calls, totals }: Pick<Board, "calls" | "totals">) {
  const { t } = useTranslation("board");
  return (
    <div className={css.floor}>
      <section className={css.totals}>
        <Total number={totals.bests} words={t("totals.bests", { count: totals.bests })} size="hero" />
        <div className={css.pair}>
          <Total number={totals.testsDone} words={t("totals.tests", { count: totals.testsDone })} />
          <Total
            number={totals.athletesTested}
            words={t("totals.athletes", { count: totals.athletesTested })}
          />
        </div>
        <LeagueTotals leagues={totals.leagues} />
      </section>
      <section className={css.calls}>
        <h2 className={css.title}>{t("calls.title")}</h2>
        {calls.length === 0 && <p className={css.none}>{t("calls.none")}</p>}
        {calls.map(({ test, called }) => (
          <div key={test} className={css.station}>
            <TestMark test={test} size="large" />
            <ul className={css.called}>
              {called.slice(0, calledShown).map(({ bib, name }) => (
                <li key={bib}>
                  <b>{bib}</b>
                  {name !== null && <span data-room={roomFor(name)}>{name}</span>}
                </li>
              ))}
              {called.length > calledShown && (
                <li className={css.more}>{t("calls.more", { count: called.length - calledShown })}</li>
              )}
            </ul>
          </div>
        ))}
      </section>
    </div>
  );
}

interface TotalProps {
  readonly number: number;
  readonly words: string;
  readonly size?: "hero" | "sum";
}

function Total({ number, words, size = "sum" }: TotalProps) {
  return (
    <p className={css.total}>
      <strong className={css[size]}>{number}</strong> <span>{words}</span>
    </p>
  );
}
