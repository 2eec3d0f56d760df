import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { column } from "../../../parts/layout/DataTable.tsx";
import { useWriteDay } from "../../../words/dates.ts";
import type { Summary, SummaryMark, SummaryPart, SummaryRow } from "../summary.ts";
import { useWrite, useWriteChange } from "../useWords.ts";
import css from "./Everybody.module.css";
import { Test } from "./Test.tsx";
import { useFacts, Who } from "./Who.tsx";

interface Line {
  readonly who: SummaryRow["who"];
  readonly test: TestCode;
  readonly value: number;
  readonly variant: string;
  readonly news: NonNullable<SummaryMark["news"]>;
}

/** Returns bests and clear gains, test by test, the clear gains of a test first. */
function linesOf({ rows, tests }: Summary): Line[] {
  const all = rows.flatMap(({ who, tests: cells }) =>
    cells.flatMap(({ test, marks }) =>
      marks.flatMap(({ variant, mark, news }): Line[] =>
        mark.state === "complete" && news !== null ? [{ who, test, value: mark.value, variant, news }] : [],
      ),
    ),
  );
  const worth = ({ news }: Line) => Number(news.verdict === "clear gain");
  return tests.flatMap(({ test }) =>
    all
      .filter((line) => line.test === test && (worth(line) === 1 || line.news.standing === "best"))
      .sort((a, b) => worth(b) - worth(a)),
  );
}

export function useHighlights(summary: Summary, lengths: LengthUnit): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const write = useWrite(lengths);
  const writeChange = useWriteChange(lengths);
  const writeDay = useWriteDay();
  const facts = useFacts(summary.league === null);
  return {
    key: "highlights",
    title: t("highlights.title"),
    columns: [
      column("name", t("column.name"), "auto", ({ who }) => <Who who={who} facts={facts(who)} />),
      column("test", t("column.test"), "13rem", ({ test, variant }) => (
        <Test test={test} variant={variant} />
      )),
      column("mark", t("column.mark"), "13rem", ({ test, value, news: { standing } }) => (
        <>
          <strong>{write(test, value)}</strong>{" "}
          {standing === "best" && <span className={`small strong ${css.best}`}>{t("standing.best")}</span>}
        </>
      )),
      column(
        "was",
        t("column.was"),
        "11rem",
        ({ test, news: { level, earlier, previousDate } }) =>
          level !== null &&
          previousDate !== null && (
            <span className={css.two}>
              <span>{write(test, level)}</span>
              <span className="small quiet">
                {earlier > 1 ? t("highlights.level", { results: earlier }) : writeDay(previousDate)}
              </span>
            </span>
          ),
      ),
      column(
        "change",
        t("column.change"),
        "14rem",
        ({ test, news: { change, verdict } }) =>
          change !== null &&
          verdict !== null && (
            <span className={css.two}>
              <span>{writeChange(test, change)}</span>
              {verdict === "clear gain" ? (
                <strong>{t(`verdict.${verdict}`)}</strong>
              ) : (
                <span className="small quiet">{t(`verdict.${verdict}`)}</span>
              )}
            </span>
          ),
      ),
    ],
    lines: linesOf(summary),
    lineKey: ({ who, test, variant }) => `${who.athleteId} ${test} ${variant}`,
    empty: t("highlights.empty"),
    rowHeight: 56,
    paperWidths: [28, 19, 19, 16, 18],
  };
}
