import { useTranslation } from "react-i18next";
import { boxesOf } from "../../../electron/domain/keyed/boxes.ts";
import type { Paper } from "../../app/saving.ts";
import { useTestWords } from "../../app/testWords.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { faceOf, readParameters } from "../../tests/registry.ts";
import { writeDate } from "../../words/dates.ts";
import type { Page } from "./pages.ts";
import css from "./RecordPage.module.css";
import { RecordTable } from "./RecordTable.tsx";

export interface RecordPageProps {
  readonly record: Extract<Page, { kind: "record" }>;
  readonly day: { readonly title: string; readonly date: string };
  /** For whom these sheets are. */
  readonly who: string;
  /** The test's parameters of the day. */
  readonly parameters: unknown;
  readonly size: Paper;
}

/** One page of a station's record sheet: how it counts, a line for each athlete, and empty lines for walk-ups. */
export function RecordPage({ record, day, who, parameters, size }: RecordPageProps) {
  const { t, i18n } = useTranslation(["papers", "cautions", "common"]);
  const testWord = useTestWords();
  const { test, page, pages } = record;
  const numbers = faceOf(test).numbers(readParameters(test, parameters));
  return (
    <article className={`${css.page} print-sheet`} data-paper={size} data-test={test}>
      <header className={css.head}>
        <TestMark test={test} size="large" />
        <div>
          <h1>{testWord(test, "name")}</h1>
          <p>{who}</p>
        </div>
        <p className={`print-day ${css.day}`}>
          <strong>{day.title}</strong>
          <span>{writeDate(day.date, i18n.language)}</span>
          <span>{t("record.page", { page, pages })}</span>
        </p>
      </header>
      <div className={css.rules}>
        <p>
          {testWord(test, "rules.counts", numbers)} {testWord(test, "rules.score", numbers)}
        </p>
        <p className="strong">{t("cautions:stop")}</p>
      </div>
      <RecordTable test={test} boxes={boxesOf(test, parameters)} lines={record.lines} />
      <footer className={css.foot}>
        <span>{t("record.foot")}</span>
        <span>{t("common:name")}</span>
      </footer>
    </article>
  );
}
