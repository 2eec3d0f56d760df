import { useTranslation } from "react-i18next";
import { column, numberColumn } from "../../../parts/layout/DataTable.tsx";
import type { Spread, Summary, SummaryPart } from "../summary.ts";
import { writeMs } from "../useWords.ts";
import css from "./Everybody.module.css";
import { Test } from "./Test.tsx";

type Line = Summary["stations"][number];

/** Lists each station's time per athlete, and the number of athletes without a known time. */
export function useStations(summary: Summary): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  return {
    key: "stations",
    title: t("stations.title"),
    columns: [
      column("test", t("column.test"), "10rem", ({ test }) => <Test test={test} />),
      column("atWork", t("stations.atWork"), "auto", ({ atWork }) => <Times spread={atWork} />),
      column("perAthlete", t("stations.perAthlete"), "auto", ({ perAthlete }) => (
        <Times spread={perAthlete} />
      )),
      numberColumn("not", t("stations.notTimed"), "9rem", ({ leftOut, fromSheets }) => leftOut + fromSheets),
    ],
    lines: summary.stations.some(isTimed) ? summary.stations : [],
    lineKey: ({ test }) => test,
    empty: summary.stations.some(({ fromSheets }) => fromSheets > 0)
      ? t("stations.onlySheets")
      : t("stations.none"),
    rowHeight: 56,
    notes: [t("stations.howWork"), t("stations.howStation"), t("stations.howSheets")],
    paperWidths: [20, 30, 30, 20],
  };
}

/** True if any of a station's results were entered as they happened. */
function isTimed({ atWork, perAthlete, leftOut }: Line): boolean {
  return atWork !== null || perAthlete !== null || leftOut > 0;
}

/** Shows the median, then the range and the count. */
function Times({ spread }: { readonly spread: Spread | null }) {
  const { t } = useTranslation(["summary", "athletes"]);
  if (spread === null) return <span className="small quiet">{t("stations.unknown")}</span>;
  return (
    <span className={css.two}>
      <strong>{writeMs(spread.median)}</strong>
      <span className="small quiet">
        {t("stations.range", { low: writeMs(spread.lowest), high: writeMs(spread.highest) })},{" "}
        {t("athletes:count", { count: spread.count })}
      </span>
    </span>
  );
}
