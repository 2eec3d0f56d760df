import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { column, numberColumn } from "../../../parts/layout/DataTable.tsx";
import type { Summary, SummaryPart } from "../summary.ts";
import { useFromTo, useJudge, useWrite } from "../useWords.ts";
import { Test } from "./Test.tsx";

type Line = Summary["judges"][number];

/** Lists each test's marks by the initials entered with them. */
export function useJudges(summary: Summary, lengths: LengthUnit): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const write = useWrite(lengths);
  const nameOf = useJudge();
  const fromTo = useFromTo(lengths);
  return {
    key: "judges",
    title: t("judges.title"),
    lead: t("judges.lead"),
    aside: <Link href="/study">{t("judges.study")}</Link>,
    columns: [
      column("test", t("column.test"), "12.5rem", ({ test, variant }) => (
        <Test test={test} variant={variant} />
      )),
      column("judge", t("column.judge"), "auto", ({ judge }) => nameOf(judge)),
      numberColumn("marks", t("column.marks"), "8rem", ({ marks }) => marks.count),
      column("middle", t("column.middle"), "10rem", ({ test, marks }) => (
        <strong>{write(test, marks.median)}</strong>
      )),
      column("half", t("column.half"), "auto", ({ test, marks: { lower, upper } }) =>
        lower === null || upper === null ? "–" : fromTo(test, lower, upper),
      ),
      column("range", t("column.range"), "auto", ({ test, marks }) =>
        fromTo(test, marks.lowest, marks.highest),
      ),
      column("off", t("column.off"), "9rem", ({ cadences }) =>
        cadences === null ? "" : t("judges.offOf", cadences),
      ),
    ],
    lines: summary.judges,
    lineKey: ({ test, variant, judge }) => `${test} ${variant} ${nameOf(judge)} ${judge.kind}`,
    nameColumn: "judge",
    empty: t("judges.empty"),
    paperWidths: [17, 10, 8, 16, 20, 19, 10],
  };
}
