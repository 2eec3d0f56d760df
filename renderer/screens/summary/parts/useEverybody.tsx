import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { testCodes } from "../../../../electron/domain/tests/registry.ts";
import { type Column, column } from "../../../parts/layout/DataTable.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import type { Summary, SummaryPart, SummaryRow } from "../summary.ts";
import { useUnit } from "../useWords.ts";
import css from "./Everybody.module.css";
import { MarkCell } from "./MarkCell.tsx";
import { useFacts, Who } from "./Who.tsx";

/** Gaps of athletes who take no test: shown once, beside the name. */
const ofPerson = ["no-show", "expected", "not-testing"];

/** Returns the reason for having no mark at all, if all tests share one. */
function whyNothing({ tests }: SummaryRow): "no-show" | "expected" | "not-testing" | null {
  const kinds = new Set(tests.map(({ gap }) => gap?.kind ?? ""));
  const [kind] = kinds;
  if (kinds.size !== 1 || kind === undefined || !ofPerson.includes(kind)) return null;
  return kind as "no-show" | "expected" | "not-testing";
}

/** Lists athletes with their five marks; those of one league with their last test's too. */
export function useEverybody(summary: Summary, lengths: LengthUnit): SummaryPart<SummaryRow> {
  const { t } = useTranslation(["summary", "common"]);
  const unitOf = useUnit(lengths);
  const facts = useFacts(summary.league === null);
  const detail = summary.league === null ? "short" : "full";
  const tests = testCodes.map(
    (test, index): Column<SummaryRow> => ({
      key: test,
      head: (
        <span className={css.two}>
          <TestMark test={test} size="small" name="ability" />
          <span className={css.unit}>{unitOf(test)}</span>
        </span>
      ),
      cell: (row) => {
        const cell = row.tests[index];
        return cell === undefined ? null : (
          <MarkCell cell={cell} lengths={lengths} detail={detail} quiet={whyNothing(row) !== null} />
        );
      },
    }),
  );
  return {
    key: "everybody",
    title: t("everybody.title"),
    columns: [
      column("name", t("column.name"), "14rem", (row) => {
        const why = whyNothing(row);
        return <Who who={row.who} facts={[...(why === null ? [] : [t(`why.${why}`)]), ...facts(row.who)]} />;
      }),
      ...tests,
    ],
    lines: summary.rows,
    lineKey: ({ who }) => who.athleteId,
    empty: t("empty.title"),
    notes: [t("verdictHelp")],
    rowHeight: detail === "short" ? 56 : 76,
    paperWidths: [17, 16.6, 16.6, 16.6, 16.6, 16.6],
  };
}
