import { useQuery } from "@tanstack/react-query";
import { useMemo } from "react";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { readyMinute } from "../../../electron/domain/queue/queue.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import type { Answers } from "../../app/answers.ts";
import { useTRPC } from "../../app/client.tsx";
import { useNow } from "../../app/now.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Answer } from "../../parts/layout/Answer.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { writeTime } from "../../words/dates.ts";
import css from "./Floor.module.css";

type Whereabouts = Answers["day"]["floor"][number];

/** Shows where all athletes who test are: a row per athlete, a column per test. */
export function Floor() {
  const { t } = useTranslation("day");
  const trpc = useTRPC();
  const floor = useQuery(trpc.day.floor.queryOptions());
  const columns = useColumns();
  return (
    <Section title={t("floor.title")}>
      <Answer query={floor}>
        {(rows) => (
          <DataTable<Whereabouts>
            caption={t("floor.title")}
            rows={rows}
            rowKey={({ who }) => who.athleteId}
            nameColumn="name"
            columns={columns}
            empty={<p className="quiet">{t("floor.empty")}</p>}
          />
        )}
      </Answer>
    </Section>
  );
}

function useColumns(): Column<Whereabouts>[] {
  const { t } = useTranslation("day");
  const now = useNow();
  return useMemo(
    () => [
      numberColumn("bib", t("floor.bib"), "4.5rem", ({ who }) => (
        <strong className={`numeral ${css.bib}`}>{who.bib}</strong>
      )),
      column("name", t("floor.name"), "auto", ({ who }) => (
        <Link className={css.open} href={`/athletes/${who.athleteId}`}>
          {who.name}
        </Link>
      )),
      ...testCodes.map(
        (test, index): Column<Whereabouts> =>
          column(test, <TestMark test={test} size="small" />, "3.5rem", ({ tests }) => (
            <PlaceSign place={tests[index]?.place ?? "later"} />
          )),
      ),
      column("now", t("floor.now"), "22rem", (row) => <Now row={row} now={now} />),
    ],
    [t, now],
  );
}

function Now({ row, now }: { readonly row: Whereabouts; readonly now: number }) {
  const { t, i18n } = useTranslation(["day", "common"]);
  const testWord = useTestWords();
  const { next, calledTo, waitingSince, readyAt } = row;
  if (calledTo !== null) {
    return <strong>{t("floor.called", { test: testWord(calledTo, "ability") })}</strong>;
  }
  if (next === null || waitingSince === null || readyAt === null) return t("floor.finished");
  const test = testWord(next, "ability");
  const rests = Date.parse(readyAt) > now;
  const time = writeTime(rests ? readyMinute(readyAt) : waitingSince, i18n.language);
  return rests ? t("floor.rests", { test, time }) : t("floor.waits", { test, time });
}

type PlaceInTest = "done" | "waiting" | "later" | "leftOut";

const shapes: Record<PlaceInTest, string> = {
  done: "m4 12.5 5.5 5.5L20 6",
  waiting: "M3 12h16M12 5l7 7-7 7",
  later: "M12 10.5v3",
  leftOut: "M5 12h14",
};

/** Draws an athlete's state in one test: a tick, an arrow for the next one, a dot, or a dash. */
function PlaceSign({ place }: { readonly place: PlaceInTest }) {
  const { t } = useTranslation("day");
  return (
    <svg
      className={css.sign}
      viewBox="0 0 24 24"
      data-place={place}
      role="img"
      aria-label={t(`floor.${place}`)}
    >
      <path d={shapes[place]} />
    </svg>
  );
}
