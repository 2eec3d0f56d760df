import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { Summary, SummaryPart } from "../summary.ts";
import { useFromTo, useJudge, useWrite } from "../useWords.ts";
import { Test } from "./Test.tsx";

type Line = Summary["judges"][number];

/** The marks of each test by the initials that were entered with them. */
export function useJudges(summary: Summary, lengths: LengthUnit): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const write = useWrite(lengths);
  const nameOf = useJudge();
  const fromTo = useFromTo(lengths);
  return {
    key: "judges",
    title: t("judges.title"),
    lead: t("judges.lead"),
    columns: [
      {
        key: "test",
        head: t("column.test"),
        width: "11rem",
        cell: ({ test, variant }) => <Test test={test} variant={variant} />,
      },
      { key: "judge", head: t("column.judge"), cell: ({ judge }) => nameOf(judge) },
      {
        key: "marks",
        head: t("column.marks"),
        kind: "number",
        width: "6rem",
        cell: ({ marks }) => marks.count,
      },
      {
        key: "middle",
        head: t("column.middle"),
        width: "10rem",
        cell: ({ test, marks }) => <strong>{write(test, marks.median)}</strong>,
      },
      {
        key: "half",
        head: t("column.half"),
        cell: ({ test, marks: { lower, upper } }) =>
          lower === null || upper === null ? "–" : fromTo(test, lower, upper),
      },
      {
        key: "range",
        head: t("column.range"),
        cell: ({ test, marks }) => fromTo(test, marks.lowest, marks.highest),
      },
      {
        key: "off",
        head: t("column.off"),
        width: "9rem",
        cell: ({ cadences }) => (cadences === null ? "" : t("judges.offOf", cadences)),
      },
    ],
    lines: summary.judges,
    lineKey: ({ test, variant, judge }) => `${test} ${variant} ${nameOf(judge)} ${judge.kind}`,
    nameColumn: "judge",
    empty: t("judges.empty"),
    paperWidths: [17, 10, 8, 16, 20, 19, 10],
  };
}
