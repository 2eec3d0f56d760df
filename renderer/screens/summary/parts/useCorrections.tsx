import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { column } from "../../../parts/layout/DataTable.tsx";
import { useWriteSeen } from "../../../tests/seen.ts";
import { useWriteTime } from "../../../words/dates.ts";
import type { Summary, SummaryPart } from "../summary.ts";
import css from "./Everybody.module.css";
import { Test } from "./Test.tsx";
import { useFacts, Who } from "./Who.tsx";

type Line = Summary["corrections"][number];

/** Lists every void attempt: what, when, by whom, why, and the attempt in its place. */
export function useCorrections(summary: Summary, lengths: LengthUnit): SummaryPart<Line> {
  const { t } = useTranslation("summary");
  const facts = useFacts(summary.league === null);
  const writeTime = useWriteTime();
  const writeSeen = useWriteSeen();
  const entered = ({ test, seen, by }: Line["attempt"]) =>
    t("corrections.enteredBy", { seen: writeSeen(test, seen, lengths), by });
  return {
    key: "corrections",
    title: t("corrections.title"),
    columns: [
      column("time", t("column.time"), "5rem", ({ attempt }) => writeTime(attempt.void?.at ?? attempt.at)),
      column("name", t("column.name"), "12rem", ({ attempt: { who } }) => (
        <Who who={who} facts={facts(who)} />
      )),
      column("test", t("column.test"), "9.5rem", ({ attempt }) => <Test test={attempt.test} />),
      column("entered", t("column.entered"), "auto", ({ attempt }) => (
        <span className={`${css.wrap} ${css.struck}`}>{entered(attempt)}</span>
      )),
      column("instead", t("column.instead"), "auto", ({ attempt, instead }) => {
        if (instead === null) return t("corrections.nothing");
        const moved = instead.who.athleteId !== attempt.who.athleteId;
        const told = moved ? `${instead.who.name}: ${entered(instead)}` : entered(instead);
        return <span className={css.wrap}>{told}</span>;
      }),
      column("why", t("column.why"), "12rem", ({ attempt }) => (
        <span className={css.wrap}>{attempt.void?.reason}</span>
      )),
      column("by", t("column.by"), "4rem", ({ attempt }) => attempt.void?.by ?? ""),
    ],
    lines: summary.corrections,
    lineKey: ({ attempt }) => attempt.attemptId,
    nameColumn: "name",
    rowHeight: 72,
    empty: t("corrections.empty"),
    paperWidths: [7, 20, 13, 18, 18, 18, 6],
  };
}
