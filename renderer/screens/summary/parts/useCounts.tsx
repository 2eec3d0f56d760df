import { useTranslation } from "react-i18next";
import type { Column } from "../../../parts/layout/DataTable.tsx";
import type { Summary, SummaryPart } from "../summary.ts";
import { Test } from "./Test.tsx";

type Line = Summary["tests"][number];

const standings = ["first", "best", "equal", "below"] as const;
const verdicts = ["clear gain", "likely gain", "noise", "likely loss", "clear loss"] as const;

/** One line a test: how many marks, and what they are worth to those who made them. */
export function useCounts(summary: Summary): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const number = (key: string, head: string, cell: Column<Line>["cell"]): Column<Line> => ({
    ...{ key, head, cell, kind: "number" },
  });
  return {
    key: "counts",
    title: t("counts.title"),
    columns: [
      { key: "test", head: t("column.test"), width: "10rem", cell: ({ test }) => <Test test={test} /> },
      number("marks", t("column.marks"), ({ marks }) => <strong>{marks}</strong>),
      ...standings.map((each) => number(each, t(`counts.${each}`), (line) => line.standings[each])),
      ...verdicts.map((each) => number(each, t(`counts.${each}`), (line) => line.verdicts[each])),
    ],
    lines: summary.tests,
    lineKey: ({ test }) => test,
    empty: "",
    notes: [t("verdictHelp")],
    paperWidths: [18, 8, 9, 8, 8, 8, 8, 9, 8, 8, 8],
  };
}
