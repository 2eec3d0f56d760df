import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { useWriteSeen } from "../../../tests/seen.ts";
import { useWriteTime } from "../../../words/dates.ts";
import type { Summary, SummaryPart } from "../summary.ts";
import css from "./Everybody.module.css";
import { Test } from "./Test.tsx";
import { useFacts } from "./useFacts.ts";
import { Who } from "./Who.tsx";

type Line = Summary["corrections"][number];

/** Everything that no longer stands: what, when, by whom, why, and what stands instead. */
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
      {
        key: "time",
        head: t("column.time"),
        width: "5rem",
        cell: ({ attempt }) => writeTime(attempt.void?.at ?? attempt.at),
      },
      {
        key: "name",
        head: t("column.name"),
        width: "12rem",
        cell: ({ attempt: { who } }) => <Who who={who} facts={facts(who)} />,
      },
      {
        key: "test",
        head: t("column.test"),
        width: "9.5rem",
        cell: ({ attempt }) => <Test test={attempt.test} />,
      },
      {
        key: "entered",
        head: t("column.entered"),
        cell: ({ attempt }) => (
          <span className={`${css.wrap} ${css.struck}`} title={entered(attempt)}>
            {entered(attempt)}
          </span>
        ),
      },
      {
        key: "instead",
        head: t("column.instead"),
        cell: ({ attempt, instead }) => {
          if (instead === null) return t("corrections.nothing");
          const moved = instead.who.athleteId !== attempt.who.athleteId;
          const told = moved ? `${instead.who.name}: ${entered(instead)}` : entered(instead);
          return (
            <span className={css.wrap} title={told}>
              {told}
            </span>
          );
        },
      },
      {
        key: "why",
        head: t("column.why"),
        width: "12rem",
        cell: ({ attempt }) => (
          <span className={css.wrap} title={attempt.void?.reason}>
            {attempt.void?.reason}
          </span>
        ),
      },
      { key: "by", head: t("column.by"), width: "4rem", cell: ({ attempt }) => attempt.void?.by ?? "" },
    ],
    lines: summary.corrections,
    lineKey: ({ attempt }) => attempt.attemptId,
    nameColumn: "name",
    rowHeight: 72,
    empty: t("corrections.empty"),
    paperWidths: [7, 20, 13, 18, 18, 18, 6],
  };
}
