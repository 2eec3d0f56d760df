import { useTranslation } from "react-i18next";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import type { Summary, SummaryPart } from "../summary.ts";
import { useBecause } from "../useWords.ts";
import css from "./Everybody.module.css";
import { useFacts } from "./useFacts.ts";
import { Who } from "./Who.tsx";

type Line = Summary["missing"][number];

/** Who lacks which tests, and why: a line a reason. */
export function useMissing(summary: Summary): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const because = useBecause();
  const facts = useFacts(summary.league === null);
  return {
    key: "missing",
    title: t("missing.title"),
    columns: [
      { key: "name", head: t("column.name"), cell: ({ who }) => <Who who={who} facts={facts(who)} /> },
      {
        key: "tests",
        head: t("column.tests"),
        width: "11rem",
        cell: ({ tests }) => (
          <span className={css.marks}>
            {tests.map((test) => (
              <TestMark key={test} test={test} size="small" />
            ))}
          </span>
        ),
      },
      { key: "why", head: t("column.why"), width: "28rem", cell: because },
      { key: "by", head: t("column.by"), width: "5rem", cell: ({ by }) => by },
    ],
    lines: summary.missing,
    lineKey: ({ who, tests }) => `${who.athleteId} ${tests.join(" ")}`,
    empty: t("missing.empty"),
    rowHeight: 56,
    paperWidths: [28, 18, 46, 8],
  };
}
