import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { usePaperTitle, useReady, useType } from "../../../app/ready.ts";
import { type Paper, paperNamed } from "../../../app/saving.ts";
import { Ticks } from "../../../parts/marks/Ticks.tsx";
import { writeDate } from "../../../words/dates.ts";
import { type DayClock, useClock } from "../clock.ts";
import { useWaveColumns } from "../told/useWaveColumns.tsx";
import { type WaveLine, wavesOf } from "../told/waves.ts";
import type { Result } from "../types.ts";
import css from "./Paper.module.css";

/** So many waves stand on a page, under the head and over the notes. */
const linesOfPage = 22;

/** Lays the timetable out for paper: leagues and numbers, no names of athletes. Nothing for an address that names no paper. */
export function TimetablePrintPage({ paper }: { readonly paper: string }) {
  const size = paperNamed(paper);
  return size === undefined ? null : <Loaded paper={size} />;
}

function Loaded({ paper }: { readonly paper: Paper }) {
  const { t } = useTranslation("plan");
  const trpc = useTRPC();
  const { data: day } = useQuery({ ...trpc.day.current.queryOptions(), select: ({ day }) => day });
  const { data: result } = useQuery(trpc.plan.result.queryOptions());
  const isThere = day != null && result != null;
  const type = useType(isThere);
  usePaperTitle(isThere ? `${t("paper.title")}, ${day.title}` : null);
  useReady(isThere && type);
  return isThere ? <Pages day={day} result={result} paper={paper} /> : null;
}

interface PagesProps {
  readonly day: { readonly title: string; readonly date: string };
  readonly result: Result;
  readonly paper: Paper;
}

function Pages({ day, result, paper }: PagesProps) {
  const { t, i18n } = useTranslation(["plan", "common"]);
  const clock = useClock(result.begins);
  const waves = wavesOf(result.plan);
  const count = Math.max(1, Math.ceil(waves.length / linesOfPage));
  const { end } = result.plan;
  return (
    <main>
      {Array.from({ length: count }, (_, page) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: pages are numbered
        <article key={page} className={`${css.page} print-sheet`} data-paper={paper}>
          <header className={css.top}>
            <h1>{t("paper.title")}</h1>
            <p className="print-day">
              <strong>{day.title}</strong>
              <span>{writeDate(day.date, i18n.language)}</span>
            </p>
            <Ticks />
          </header>
          <p>{t("paper.lead", { begins: clock.time(0), ...clock.span(end) })}</p>
          <Lines lines={waves.slice(page * linesOfPage, (page + 1) * linesOfPage)} clock={clock} />
          <ul className={css.notes}>
            {(["early", "spans", "moves", "rest"] as const).map((note) => (
              <li key={note}>{t(`paper.note.${note}`)}</li>
            ))}
          </ul>
          <footer className="print-foot">
            <span>{t("paper.foot")}</span>
            <span>{count > 1 && t("paper.page", { page: page + 1, pages: count })}</span>
            <span>{t("common:name")}</span>
          </footer>
        </article>
      ))}
    </main>
  );
}

interface LinesProps {
  readonly lines: readonly WaveLine[];
  readonly clock: DayClock;
}

function Lines({ lines, clock }: LinesProps) {
  const [name, ...rest] = useWaveColumns(clock);
  if (name === undefined) return null;
  return (
    <table className={css.table}>
      <thead>
        <tr>
          {[name, ...rest].map(({ key, head, kind }) => (
            <th key={key} scope="col" data-kind={kind}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.key}>
            <th scope="row">{name.cell(line)}</th>
            {rest.map(({ key, cell, kind }) => (
              <td key={key} data-kind={kind}>
                {cell(line)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
