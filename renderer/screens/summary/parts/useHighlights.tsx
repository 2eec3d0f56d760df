import { useTranslation } from "react-i18next";
import type { LengthUnit, TestCode } from "../../../../electron/domain/protocols/protocol.ts";
import type { Column } from "../../../parts/DataTable.tsx";
import { useWriteDay } from "../../station/clock.ts";
import type { Mark, Part, Row, Summary } from "../summary.ts";
import { useWrite, useWriteChange } from "../useWords.ts";
import css from "./Everybody.module.css";
import { Test } from "./Test.tsx";

interface Line {
  readonly who: Row["who"];
  readonly test: TestCode;
  readonly value: number;
  readonly variant: string;
  readonly news: NonNullable<Mark["news"]>;
}

/** Bests and clear gains, test by test; of one test the clear gains first. */
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

export function useHighlights(summary: Summary, lengths: LengthUnit): Part<Line> {
  const { t } = useTranslation("summary");
  const write = useWrite(lengths);
  const writeChange = useWriteChange(lengths);
  const writeDay = useWriteDay();
  const league: Column<Line> = { key: "league", head: t("column.league"), cell: ({ who }) => who.league };
  const whole = summary.league === null;
  return {
    key: "highlights",
    title: t("highlights.title"),
    columns: [
      { key: "name", head: t("column.name"), cell: ({ who }) => who.name },
      ...(whole ? [league] : []),
      {
        key: "test",
        head: t("column.test"),
        width: "11rem",
        cell: ({ test, variant }) => <Test test={test} variant={variant} />,
      },
      {
        key: "mark",
        head: t("column.mark"),
        width: "7.5rem",
        cell: ({ test, value }) => <strong>{write(test, value)}</strong>,
      },
      {
        key: "was",
        head: t("column.was"),
        width: "12.5rem",
        cell: ({ test, news: { previous, previousDate } }) =>
          previous !== null && (
            <>
              {write(test, previous)}{" "}
              <span className={css.soft}>{previousDate !== null && writeDay(previousDate)}</span>
            </>
          ),
      },
      {
        key: "change",
        head: t("column.change"),
        width: "9rem",
        cell: ({ test, news: { change } }) => (change === null ? "" : writeChange(test, change)),
      },
      {
        key: "verdict",
        head: t("column.verdict"),
        width: "10rem",
        cell: ({ news: { verdict } }) =>
          verdict === "clear gain" ? (
            <strong>{t(`verdict.${verdict}`)}</strong>
          ) : (
            verdict !== null && t(`verdict.${verdict}`)
          ),
      },
      {
        key: "standing",
        head: t("column.standing"),
        width: "8rem",
        cell: ({ news }) => t(`standing.${news.standing}`),
      },
    ],
    lines: linesOf(summary),
    lineKey: ({ who, test, variant }) => `${who.athleteId} ${test} ${variant}`,
    empty: t("highlights.empty"),
    paperWidths: whole ? [16, 14, 14, 9, 15, 11, 13, 8] : [20, 15, 10, 17, 13, 15, 10],
  };
}
