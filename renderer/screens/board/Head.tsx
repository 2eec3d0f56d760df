import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import css from "./Head.module.css";

interface HeadProps {
  readonly board: Board;
  /** True if the scene does not show the figures itself. */
  readonly figures: boolean;
}

/** Shows the day, and the two figures about everybody. */
export function Head({ board: { day, demo, totals }, figures }: HeadProps) {
  const { t } = useTranslation("board");
  const { t: common } = useTranslation("common");
  return (
    <header className={css.head}>
      <h1 className={css.title}>{day?.title ?? t("noDay")}</h1>
      {demo && <span className={css.tag}>{common("day.demo")}</span>}
      {day !== null && day.state !== "open" && <span className={css.tag}>{t(`state.${day.state}`)}</span>}
      {figures && totals.testsDone > 0 && (
        <p className={css.totals}>
          <Figure number={totals.bests} words={t("totals.bests", { count: totals.bests })} />
          <Figure number={totals.testsDone} words={t("totals.tests", { count: totals.testsDone })} />
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
