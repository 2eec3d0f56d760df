import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { leastTogether } from "../../../../electron/domain/statistics/shared.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { column } from "../../../parts/layout/DataTable.tsx";
import { IntervalEnds, IntervalPlot } from "../../../parts/plots/IntervalPlot.tsx";
import type { Summary, SummaryPart } from "../summary.ts";
import {
  AgainstOthers,
  type ChangeLine,
  ClearChanges,
  Compared,
  type FoundLine,
  isFound,
  LeagueTest,
  MeanChange,
  TooFew,
  TrueSpread,
} from "./ChangeCells.tsx";

/** Shows each league's change per test with its interval, and what chance would make. */
export function useChanges(summary: Summary, lengths: LengthUnit): SummaryPart<ChangeLine> {
  const { t } = useTranslation("summary");
  const whole = summary.league === null;
  const reach = reachOf(summary.changes);
  const found = (key: string, head: ReactNode, width: string, cell: (line: FoundLine) => ReactNode) =>
    column<ChangeLine>(key, head, width, (line) => (isFound(line) ? cell(line) : null));
  return {
    key: "changes",
    title: t(whole ? "changes.title" : "changes.titleLeague"),
    lead: t("changes.lead"),
    columns: [
      column<ChangeLine>("league", t("column.test"), whole ? "13.5rem" : "11rem", (line) => (
        <LeagueTest line={line} whole={whole} />
      )),
      column<ChangeLine>("pairs", t("changes.compared"), "8.25rem", (line) => <Compared line={line} />),
      found("picture", <IntervalEnds />, "auto", (line) => <Picture line={line} reach={reach} />),
      column<ChangeLine>("mean", t("changes.mean"), "11.5rem", (line) =>
        isFound(line) ? <MeanChange line={line} lengths={lengths} /> : <TooFew line={line} />,
      ),
      found("others", t("changes.againstOthers"), "10.5rem", (line) => (
        <AgainstOthers line={line} lengths={lengths} />
      )),
      found("spread", t("changes.spread"), "10rem", (line) => <TrueSpread line={line} lengths={lengths} />),
      found("clear", t("changes.clearHead"), "9.5rem", (line) => <ClearChanges line={line} />),
    ],
    lines: summary.changes,
    lineKey: ({ league, test, variant }) => `${league} ${test} ${variant}`,
    empty: t("changes.empty"),
    notes: notesOf(summary.changes).map((key) => t(`changes.how.${key}`, { least: leastTogether })),
    // Two lines more for what practice gained, in words for a time.
    rowHeight: summary.changes.some(({ found: told }) => told !== null && told.learnt !== 0) ? 124 : 88,
    paperWidths: [17, 12, 14, 17, 16, 13, 11],
  };
}

/** Returns the last whole step that all intervals lie within, in typical errors. */
function reachOf(changes: readonly ChangeLine[]): number {
  const ends = changes.filter(isFound).map(({ found: { mean, error } }) => {
    return Math.max(Math.abs(mean.low), Math.abs(mean.high)) / error;
  });
  return Math.max(1, Math.ceil(Math.max(0, ...ends)));
}

function Picture({ line: { found }, reach }: { readonly line: FoundLine; readonly reach: number }) {
  const { mean, error, holds } = found;
  const inErrors = { amount: mean.amount / error, low: mean.low / error, high: mean.high / error };
  return <IntervalPlot estimate={inErrors} reach={reach} strong={holds} />;
}

/** Returns which sentences on how to read the table it needs. */
function notesOf(changes: readonly ChangeLine[]) {
  return [
    ...(changes.some(isFound) ? (["mean", "others", "spread", "clear"] as const) : []),
    ...(changes.some(({ unfinished }) => unfinished > 0) ? (["stopped"] as const) : []),
    ...(changes.some(({ unlike }) => unlike > 0) ? (["unlike"] as const) : []),
  ];
}
