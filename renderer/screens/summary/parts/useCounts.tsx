import { useTranslation } from "react-i18next";
import { column, numberColumn } from "../../../parts/layout/DataTable.tsx";
import type { Summary, SummaryPart } from "../summary.ts";
import { Test } from "./Test.tsx";

type Line = Summary["tests"][number];

const standings = ["first", "best", "equal", "below"] as const;
const verdicts = ["clear gain", "likely gain", "noise", "likely loss", "clear loss"] as const;

/** Counts each test's marks, by standing in their athletes' own history and by verdict. */
export function useCounts(summary: Summary): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  return {
    key: "counts",
    title: t("counts.title"),
    columns: [
      column("test", t("column.test"), "10rem", ({ test }) => <Test test={test} />),
      numberColumn("marks", t("column.marks"), "auto", ({ marks }) => <strong>{marks}</strong>),
      ...standings.map((each) =>
        numberColumn(each, t(`counts.${each}`), "auto", (line: Line) => line.standings[each]),
      ),
      ...verdicts.map((each) =>
        numberColumn(each, t(`counts.${each}`), "auto", (line: Line) => line.verdicts[each]),
      ),
    ],
    lines: summary.tests,
    lineKey: ({ test }) => test,
    empty: "",
    notes: [t("verdictHelp")],
    paperWidths: [18, 8, 9, 8, 8, 8, 8, 9, 8, 8, 8],
  };
}
