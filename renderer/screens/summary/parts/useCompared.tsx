import { useTranslation } from "react-i18next";
import { leastToCompare } from "../../../../electron/domain/summary/judges.ts";
import { column } from "../../../parts/layout/DataTable.tsx";
import type { Spread, Summary, SummaryPart } from "../summary.ts";
import { useJudge, useVariant } from "../useWords.ts";

type Judge = Summary["judges"][number];
type Line = Judge & { readonly compared: NonNullable<Judge["compared"]> };

function isCompared(judge: Judge): judge is Line {
  return judge.compared !== null;
}

/** Formats reps with their sign; halves and quarters stay as they are. */
function signed(reps: number): string {
  return reps > 0 ? `+${reps}` : reps < 0 ? `−${-reps}` : "0";
}

/** Compares the changes of each judge's push-ups with all others', in numbers and without blame. */
export function useCompared(summary: Summary): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const nameOf = useJudge();
  const variant = useVariant();
  const middle = (spread: Spread | null) =>
    spread === null
      ? t("compared.nobody")
      : t("compared.withEarlier", { value: signed(spread.median), count: spread.count });
  return {
    key: "compared",
    title: t("compared.title"),
    lead: t("compared.lead"),
    columns: [
      column(
        "judge",
        t("column.judge"),
        "9rem",
        ({ judge, variant: way }) => `${nameOf(judge)}, ${variant(way)}`,
      ),
      column("own", t("compared.own"), "auto", ({ compared }) => middle(compared.own)),
      column("others", t("compared.others"), "auto", ({ compared }) => middle(compared.others)),
      column("difference", t("compared.difference"), "auto", ({ compared: { shift } }) =>
        shift === null
          ? "–"
          : t("compared.shift", {
              amount: signed(shift.amount),
              low: signed(shift.low),
              high: signed(shift.high),
            }),
      ),
      column("says", t("compared.says"), "18rem", ({ compared }) =>
        t(`compared.finding.${compared.finding}`),
      ),
    ],
    lines: summary.judges.filter(isCompared),
    lineKey: ({ judge, variant: way }) => `${nameOf(judge)} ${way}`,
    empty: t("compared.empty"),
    notes: [t("compared.how", { least: leastToCompare })],
    paperWidths: [12, 21, 21, 22, 24],
  };
}
