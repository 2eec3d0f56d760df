import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import css from "./Head.module.css";
import { useTotals } from "./totals.ts";

interface HeadProps {
  readonly board: Board;
  /** True if the scene does not show the figures itself. */
  readonly figures: boolean;
}

/** Shows the day, and the first two figures about everybody. */
export function Head({ board: { day, demo, totals }, figures }: HeadProps) {
  const { t } = useTranslation("board");
  const { t: common } = useTranslation("common");
  const told = useTotals()(totals);
  return (
    <header className={css.head}>
      <h1 className={css.title}>{day?.title ?? t("noDay")}</h1>
      {demo && <span className={`quiet strong ${css.tag}`}>{common("day.demo")}</span>}
      {day !== null && day.state !== "open" && (
        <span className={`quiet strong ${css.tag}`}>{t(`state.${day.state}`)}</span>
      )}
      {figures && (
        <p className={`quiet ${css.totals}`}>
          {[...told.news.slice(0, 1), ...told.done.slice(0, 1)].map(({ number, words }) => (
            <Figure key={words} number={number} words={words} />
          ))}
        </p>
      )}
    </header>
  );
}

function Figure({ number, words }: { readonly number: number; readonly words: string }) {
  return (
    <span className={css.figure}>
      <strong>{number}</strong> {words}
    </span>
  );
}
