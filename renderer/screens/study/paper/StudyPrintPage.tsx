import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { leastAthletes } from "../../../../electron/domain/study/shape.ts";
import { useTRPC } from "../../../app/client.tsx";
import { usePaperTitle, useReady, useType } from "../../../app/ready.ts";
import { type Paper, paperNamed } from "../../../app/saving.ts";
import { Ticks } from "../../../parts/marks/Ticks.tsx";
import { dateHere, useWriteDay } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { Agreement } from "../Agreement.tsx";
import { useBiasLines } from "../biasLines.ts";
import { Facts } from "../ResultParts.tsx";
import type { ResultProps, StudyView } from "../types.ts";
import { useAmount, useStudyName } from "../words.ts";
import css from "./Paper.module.css";

interface StudyPrintPageProps {
  readonly id: string;
  readonly paper: string;
}

/** Lays out what a study shows for paper: no names of athletes. Nothing for an address that names no paper. */
export function StudyPrintPage({ id, paper }: StudyPrintPageProps) {
  const size = paperNamed(paper);
  return size === undefined ? null : <Loaded id={id} paper={size} />;
}

function Loaded({ id, paper }: { readonly id: string; readonly paper: Paper }) {
  const trpc = useTRPC();
  const { lengths } = useLengthUnit();
  const { data } = useQuery(trpc.study.get.queryOptions({ studyId: id, lengths }));
  const nameOf = useStudyName();
  const type = useType(data !== undefined);
  usePaperTitle(data === undefined ? null : nameOf(data.study));
  useReady(data !== undefined && type);
  return data === undefined ? null : <Page study={data} paper={paper} />;
}

function Page({ study, paper }: { readonly study: StudyView; readonly paper: Paper }) {
  const { t } = useTranslation(["study", "common"]);
  const nameOf = useStudyName();
  const writeDay = useWriteDay();
  const { day, at, by, aim } = study.study;
  const { result } = study;
  return (
    <main>
      <article className={`${css.page} print-sheet`} data-paper={paper}>
        <header className={css.top}>
          <h1>{nameOf(study.study)}</h1>
          <p>
            {day !== null && `${t("one.ofDay", { title: day.title, date: writeDay(day.date) })} `}
            {t("one.planned", { date: writeDay(dateHere(new Date(at))), by })}{" "}
            {t("paper.athletes", { count: study.whole, aim })}
          </p>
          <Ticks />
        </header>
        {result === null ? (
          <p>{t("missing.few", { count: leastAthletes })}</p>
        ) : (
          <Found study={study} result={result} />
        )}
        <footer className="print-foot">
          <span>{t("apart")}</span>
          <span>{t("common:name")}</span>
        </footer>
      </article>
    </main>
  );
}

function Found({ study, result }: ResultProps) {
  const { t } = useTranslation("study");
  const { kind } = study.study;
  const [pair] = result.pairs;
  return (
    <>
      <section>
        <h2>{t("result.title")}</h2>
        <Facts study={study} result={result} />
      </section>
      <section>
        <h2>{t(`bias.title.${kind}`)}</h2>
        <Biases study={study} result={result} />
      </section>
      {pair !== undefined && (
        <section>
          <h2>{t("picture.title")}</h2>
          <Agreement study={study} pair={pair} />
        </section>
      )}
      <section>
        <h2>{t("parts.title")}</h2>
        <Parts study={study} result={result} />
      </section>
    </>
  );
}

function Biases({ study, result }: ResultProps) {
  const lines = useBiasLines(study, result);
  return (
    <ul className={css.lines}>
      {lines.map(({ name, bias, range, says }) => (
        <li key={name}>
          <strong>{name}</strong>: {bias} ({range}). {says}
        </li>
      ))}
    </ul>
  );
}

function Parts({ study, result: { parts } }: ResultProps) {
  const { t } = useTranslation("study");
  const amount = useAmount();
  const { kind } = study.study;
  return (
    <ul className={css.lines}>
      {(["athletes", "series", "rest"] as const).map((key) => (
        <li key={key}>
          {t("parts.line", {
            part: t(`parts.of.${kind}.${key}`),
            spread: amount(parts[key].spread),
            percent: parts[key].percent,
          })}
        </li>
      ))}
    </ul>
  );
}
