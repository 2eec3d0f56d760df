import { useTranslation } from "react-i18next";
import type { LengthUnit, Written } from "../../../electron/domain/tests/protocol.ts";
import { useTestWords } from "../../app/testWords.ts";
import { type Column, column, DataTable } from "../../parts/layout/DataTable.tsx";
import { useWriteDay } from "../../words/dates.ts";
import { useUnitWord, useWriteChange } from "../../words/marks.ts";
import css from "./Series.module.css";
import type { Series } from "./types.ts";

interface SeriesTableProps {
  readonly series: Series;
  readonly lengths: LengthUnit;
}

type Row = Series["points"][number] & { readonly place: number };

/** Lists the marks of one test, newest first: each against the one before it, and against the best before it. */
export function SeriesTable({ series: { test, points }, lengths }: SeriesTableProps) {
  const { t } = useTranslation(["athletes", "common"]);
  const testWord = useTestWords();
  const columns = useColumns(useWriteChange(test, lengths), points[0]?.written.unit ?? "");
  return (
    <DataTable<Row>
      caption={t("series.table", { test: testWord(test, "ability") })}
      rows={points.map((point, place) => ({ ...point, place })).toReversed()}
      rowKey={({ place }) => place}
      columns={columns}
      maxHeight="20rem"
    />
  );
}

function useColumns(writeChange: (change: number) => string, unit: Written["unit"]): Column<Row>[] {
  const { t } = useTranslation(["athletes", "station", "common"]);
  const writeDay = useWriteDay();
  const word = useUnitWord()(unit);
  function beside(standing: Row["standing"], source: Row["source"]): string {
    const stands = standing === "below" ? [] : [t(`series.standing.${standing}`)];
    return [...stands, ...(source === "imported" ? [t("series.sheet")] : [])].join(", ");
  }
  return [
    column("date", t("series.column.date"), "8.5rem", ({ date, today }) =>
      today ? t("series.today") : writeDay(date),
    ),
    column(
      "mark",
      word === "" ? t("series.column.mark") : t("series.column.markIn", { unit: word }),
      "9.5rem",
      ({ written: { number }, standing, source }) => (
        <>
          <strong>{number}</strong>
          <span className={`small quiet ${css.quiet}`}> {beside(standing, source)}</span>
        </>
      ),
    ),
    column("says", t("series.column.says"), "auto", ({ change, verdict }) => {
      if (change === null || verdict === null) return "–";
      const said = change === 0 ? t("series.same") : writeChange(change);
      return `${said}, ${t(`series.short.${verdict}`)}`;
    }),
  ];
}
