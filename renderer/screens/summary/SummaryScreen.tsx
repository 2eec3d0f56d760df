import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import type { Paper } from "../../app/saving.ts";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { PaperActions } from "../../parts/controls/PaperActions.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { DataTable } from "../../parts/layout/DataTable.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { writeDate } from "../../words/dates.ts";
import { forFile } from "../../words/forFile.ts";
import { useLengthUnit } from "../../words/lengths.ts";
import { printPathOf } from "./paths.ts";
import { SheetsPart } from "./SheetsPart.tsx";
import css from "./Summary.module.css";
import type { AnyPart, Summary } from "./summary.ts";
import { Together } from "./Together.tsx";
import { useParts } from "./useParts.ts";
import { Which } from "./Which.tsx";

interface SummaryScreenProps {
  /** Undefined: the day at hand, else the newest one. */
  readonly dayId: number | undefined;
  /** Null: everybody. */
  readonly leagueId: number | null;
}

/** Shows the result of a day: who did what, what is missing, how it went, and the files and pages to take along. */
export function SummaryScreen({ dayId, leagueId }: SummaryScreenProps) {
  const { t, i18n } = useTranslation("summary");
  const trpc = useTRPC();
  const input = dayId === undefined ? { leagueId } : { dayId, leagueId };
  const summary = useQuery({ ...trpc.summary.get.queryOptions(input), placeholderData: keepPreviousData });
  const told = summary.data ?? null;
  const title = told === null ? "" : told.day.title;
  return (
    <Screen
      title={t("title")}
      ready={summary.isFetched}
      {...(told !== null && {
        lead: t("ofDay", { title, date: writeDate(told.day.date, i18n.language) }),
        actions: told.rows.length > 0 && <Paperwork summary={told} />,
      })}
    >
      <Answer query={summary}>
        {(answer) => (answer === null ? <NoDay /> : <Parts summary={answer} />)}
      </Answer>
    </Screen>
  );
}

/** Selects the paper, and saves or prints the summary. */
function Paperwork({ summary }: { readonly summary: Summary }) {
  const [paper, setPaper] = useState<Paper>("a4");
  return (
    <PaperActions
      screen="summary"
      path={printPathOf(summary.day.id, summary.league?.id ?? null)}
      paper={paper}
      onPaper={setPaper}
      fileName={useFileName(summary, paper)}
    />
  );
}

function Parts({ summary }: { readonly summary: Summary }) {
  const { t } = useTranslation("summary");
  const { lengths } = useLengthUnit();
  const parts = useParts(summary, lengths);
  return (
    <>
      <Which summary={summary} />
      {summary.rows.length === 0 ? (
        <Nobody />
      ) : (
        <>
          {summary.day.state !== "closed" && <p className={css.going}>{t("open")}</p>}
          <Numbers totals={summary.totals} />
          <Together together={summary.together} />
          {parts.map((part) => (
            <PartOnScreen key={part.key} part={part} />
          ))}
          <SheetsPart summary={summary} />
        </>
      )}
    </>
  );
}

function NoDay() {
  const { t } = useTranslation("summary");
  return (
    <EmptyState
      title={t("none.title")}
      steps={[t("none.step")]}
      action={
        <LinkButton kind="primary" to="/">
          {t("none.go")}
        </LinkButton>
      }
    />
  );
}

function Nobody() {
  const { t } = useTranslation("summary");
  return (
    <EmptyState
      title={t("empty.title")}
      steps={[t("empty.step")]}
      action={
        <LinkButton kind="primary" to="/sheets">
          {t("empty.go")}
        </LinkButton>
      }
    />
  );
}

/** Shows the day in four numbers. */
function Numbers({ totals }: { readonly totals: Summary["totals"] }) {
  const { t } = useTranslation("summary");
  const { listed, came, measured, whole, firsts, bests, clearGains, byChance } = totals;
  return (
    <div className={css.numbers}>
      <BigNumber
        label={t("numbers.measured")}
        number={measured}
        unit={t("numbers.ofListed", { count: listed })}
        note={t("numbers.came", { count: came })}
      />
      <BigNumber label={t("numbers.whole")} number={whole} note={t("numbers.wholeNote")} />
      <BigNumber
        label={t("numbers.bests")}
        number={bests}
        note={
          byChance.bests === 0
            ? t("numbers.firsts", { count: firsts })
            : t("numbers.bestsNote", { byChance: Math.round(byChance.bests), count: firsts })
        }
      />
      <BigNumber
        label={t("numbers.gains")}
        number={clearGains}
        note={t("numbers.byChance", { byChance: Math.round(byChance.clearGains) })}
      />
    </div>
  );
}

/** Shows one part under its heading: a sentence, the table, and how to read it. */
function PartOnScreen({ part }: { readonly part: AnyPart }) {
  const { title, aside, lead, columns, lines, lineKey, nameColumn, empty, notes = [], rowHeight } = part;
  return (
    <Section title={title} aside={aside}>
      {lead !== undefined && <p className={css.lead}>{lead}</p>}
      <DataTable
        caption={title}
        columns={columns}
        rows={lines}
        rowKey={lineKey}
        empty={<p className="quiet">{empty}</p>}
        maxHeight="75vh"
        whole
        {...(nameColumn !== undefined && { nameColumn })}
        {...(rowHeight !== undefined && { rowHeight })}
      />
      {lines.length > 0 && notes.length > 0 && (
        <div className={`small quiet ${css.notes}`}>
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </div>
      )}
    </Section>
  );
}

/** Makes the file's name; a league's name may contain characters that a file's name can't. */
function useFileName({ day, league }: Summary, paper: Paper): string {
  const { t } = useTranslation(["summary", "common"]);
  const whose = league === null ? t("which.all") : forFile(league.name);
  return t("file", { date: day.date, whose, paper: t(`common:paper.${paper}`) });
}
