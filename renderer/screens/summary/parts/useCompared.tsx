import { useTranslation } from "react-i18next";
import { leastToCompare } from "../../../../electron/domain/summary/judges.ts";
import type { Spread, Summary, SummaryPart } from "../summary.ts";
import { useJudge, useVariant } from "../useWords.ts";

type Judge = Summary["judges"][number];
type Line = Judge & { readonly compared: NonNullable<Judge["compared"]> };

function isCompared(judge: Judge): judge is Line {
  return judge.compared !== null;
}

/** Reps with their sign, halves and quarters as they fall. */
function signed(reps: number): string {
  return reps > 0 ? `+${reps}` : reps < 0 ? `−${-reps}` : "0";
}

/** The changes of each judge's push-ups beside all others', with numbers and without blame. */
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
      {
        key: "judge",
        head: t("column.judge"),
        width: "9rem",
        cell: ({ judge, variant: way }) => `${nameOf(judge)}, ${variant(way)}`,
      },
      { key: "own", head: t("compared.own"), cell: ({ compared }) => middle(compared.own) },
      { key: "others", head: t("compared.others"), cell: ({ compared }) => middle(compared.others) },
      {
        key: "difference",
        head: t("compared.difference"),
        cell: ({ compared: { shift } }) =>
          shift === null
            ? "–"
            : t("compared.shift", {
                amount: signed(shift.amount),
                low: signed(shift.low),
                high: signed(shift.high),
              }),
      },
      {
        key: "says",
        head: t("compared.says"),
        width: "18rem",
        cell: ({ compared }) => t(`compared.finding.${compared.finding}`),
      },
    ],
    lines: summary.judges.filter(isCompared),
    lineKey: ({ judge, variant: way }) => `${nameOf(judge)} ${way}`,
    empty: t("compared.empty"),
    notes: [t("compared.how", { least: leastToCompare })],
    paperWidths: [12, 21, 21, 22, 24],
  };
}
