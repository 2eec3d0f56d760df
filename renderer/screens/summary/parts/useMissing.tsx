import { useTranslation } from "react-i18next";
import { column } from "../../../parts/layout/DataTable.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import type { Summary, SummaryPart } from "../summary.ts";
import { useBecause } from "../useWords.ts";
import css from "./Everybody.module.css";
import { useFacts, Who } from "./Who.tsx";

type Line = Summary["missing"][number];

/** Lists the athletes who lack tests, one line per reason. */
export function useMissing(summary: Summary): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const because = useBecause();
  const facts = useFacts(summary.league === null);
  return {
    key: "missing",
    title: t("missing.title"),
    columns: [
      column("name", t("column.name"), "auto", ({ who }) => <Who who={who} facts={facts(who)} />),
      column("tests", t("column.tests"), "11rem", ({ tests }) => (
        <span className={css.marks}>
          {tests.map((test) => (
            <TestMark key={test} test={test} size="small" />
          ))}
        </span>
      )),
      column("why", t("column.why"), "28rem", because),
      column("by", t("column.by"), "5rem", ({ by }) => by),
    ],
    lines: summary.missing,
    lineKey: ({ who, tests }) => `${who.athleteId} ${tests.join(" ")}`,
    empty: t("missing.empty"),
    rowHeight: 56,
    paperWidths: [28, 18, 46, 8],
  };
}
