import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { Ticks } from "../../../parts/marks/Ticks.tsx";
import { writeDate } from "../../../words/dates.ts";
import type { Summary } from "../summary.ts";
import css from "./Paper.module.css";
import type { SummaryPaper } from "./papers.ts";

interface PageProps {
  readonly summary: Summary;
  readonly paper: SummaryPaper;
  /** Null for the page that holds everything, to be measured. */
  readonly page: number | null;
  readonly pages: number;
  readonly children: ReactNode;
}

/** Lays out one page with its head and foot; the first one also shows the day in numbers. */
export function Page({ summary, paper, page, pages, children }: PageProps) {
  const { t, i18n } = useTranslation(["summary", "common"]);
  const { day, league } = summary;
  return (
    <article
      className={page === null ? css.all : `${css.page} print-sheet`}
      data-paper={paper}
      aria-hidden={page === null}
    >
      <header className={css.top}>
        <h1>{league === null ? t("title") : league.name}</h1>
        <p className={css.day}>
          <strong>{day.title}</strong>
          <span>{writeDate(day.date, i18n.language)}</span>
        </p>
        <Ticks />
      </header>
      {(page === null || page === 1) && <Totals summary={summary} />}
      <div className={css.body} data-measure="body">
        {children}
      </div>
      <footer className="print-foot">
        <span>{t("paper.foot")}</span>
        <span>{t("paper.page", { page: page ?? 1, pages })}</span>
        <span>{t("common:name")}</span>
      </footer>
    </article>
  );
}

function Totals({ summary }: { readonly summary: Summary }) {
  const { t } = useTranslation("summary");
  const { clearGains: gains, ...totals } = summary.totals;
  return (
    <p className={css.totals} data-measure="totals">
      {t("paper.totals", { ...totals, gains })}
      {summary.day.state !== "closed" && ` ${t("open")}`}
    </p>
  );
}
