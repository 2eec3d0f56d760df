import { useQuery } from "@tanstack/react-query";
import { type ReactNode, useLayoutEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { usePaperTitle, useReady, useType } from "../../../app/ready.ts";
import { type Paper, paperNamed } from "../../../app/saving.ts";
import { Ticks } from "../../../parts/marks/Ticks.tsx";
import { writeDate } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { idOf } from "../paths.ts";
import type { AnyPart, Summary } from "../summary.ts";
import { useParts } from "../useParts.ts";
import css from "./Paper.module.css";
import { PartOnPaper } from "./PartOnPaper.tsx";
import { type PartHeights, type Piece, pack } from "./pack.ts";

/** Returns the height of an element, in px; 0 for none. */
function heightOf(element: Element | null): number {
  return element === null ? 0 : element.getBoundingClientRect().height;
}

function heightsOf(part: Element): PartHeights {
  const of = (name: string) => heightOf(part.querySelector(`[data-measure="${name}"]`));
  const lines = [...part.querySelectorAll('[data-measure="line"]')].map(heightOf);
  return { heading: of("heading"), head: of("head"), lines, after: of("after") };
}

/**
 * Divides a page that holds everything, whatever its height, into pages of its paper.
 * @param all the page: its content is `[data-measure="body"]`, each part of it one of the body's children
 */
function dividePages(all: HTMLElement): Piece[][] {
  const body = all.querySelector<HTMLElement>('[data-measure="body"]');
  if (body === null) return [];
  const edges = heightOf(all) - heightOf(body);
  const sheet = Number.parseFloat(getComputedStyle(all).getPropertyValue("--sheet-height"));
  const totals = heightOf(all.querySelector('[data-measure="totals"]'));
  const gap = Number.parseFloat(getComputedStyle(body).rowGap) || 0;
  // A hair of room, so that no rounding of a line's height pushes the foot off the page.
  const room = sheet - edges - 2;
  return pack([...body.children].map(heightsOf), { first: room, other: room + totals, gap });
}

interface SummaryPrintPageProps {
  readonly day: string;
  /** A league's id, or `all`. */
  readonly league: string;
  readonly paper: string;
}

/** Lays a summary out for paper, without the desk's frame; renders nothing for an invalid address. */
export function SummaryPrintPage({ day, league, paper }: SummaryPrintPageProps) {
  const size = paperNamed(paper);
  const dayId = idOf(day);
  const leagueId = league === "all" ? null : idOf(league);
  if (size === undefined || dayId === undefined || leagueId === undefined) return null;
  return <Pages dayId={dayId} leagueId={leagueId} paper={size} />;
}

interface PagesProps {
  readonly dayId: number;
  readonly leagueId: number | null;
  readonly paper: Paper;
}

function Pages({ dayId, leagueId, paper }: PagesProps) {
  const { t } = useTranslation("summary");
  const trpc = useTRPC();
  const { data } = useQuery(trpc.summary.get.queryOptions({ dayId, leagueId }));
  const title = data == null ? null : `${data.league?.name ?? t("title")}, ${data.day.title}`;
  usePaperTitle(title);
  return data == null ? null : <Divided summary={data} paper={paper} />;
}

/** Lays everything out once on a page without end, then on as many pages as it takes. */
function Divided({ summary, paper }: { readonly summary: Summary; readonly paper: Paper }) {
  const { lengths } = useLengthUnit();
  const parts = useParts(summary, lengths);
  const all = useRef<HTMLDivElement>(null);
  const type = useType();
  const [pages, setPages] = useState<Piece[][] | null>(null);
  useLayoutEffect(() => {
    const page = all.current?.querySelector("article") ?? null;
    if (type && page !== null) setPages(dividePages(page));
  }, [type]);
  useReady(pages !== null);
  if (pages === null) {
    return (
      <div ref={all}>
        <Page summary={summary} paper={paper} page={null} pages={1}>
          {parts.map((part) => (
            <PartOnPaper key={part.key} part={part} piece={{ from: 0, to: part.lines.length, after: true }} />
          ))}
        </Page>
      </div>
    );
  }
  return (
    <main>
      {pages.map((pieces, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: pages are numbered
        <Page key={index} summary={summary} paper={paper} page={index + 1} pages={pages.length}>
          {pieces.map((piece) => (
            <OnPage key={`${piece.part} ${piece.from}`} parts={parts} piece={piece} />
          ))}
        </Page>
      ))}
    </main>
  );
}

function OnPage({ parts, piece }: { readonly parts: readonly AnyPart[]; readonly piece: Piece }) {
  const part = parts[piece.part];
  return part === undefined ? null : <PartOnPaper part={part} piece={piece} />;
}

interface PageProps {
  readonly summary: Summary;
  readonly paper: Paper;
  /** Null for the page that holds everything, to be measured. */
  readonly page: number | null;
  readonly pages: number;
  readonly children: ReactNode;
}

/** Lays out one page with its head and foot; the first one also shows the day in numbers. */
function Page({ summary, paper, page, pages, children }: PageProps) {
  const { t, i18n } = useTranslation(["summary", "common"]);
  const { day, league } = summary;
  return (
    <article
      className={page === null ? css.all : `${css.page} print-sheet`}
      data-paper={paper}
      aria-hidden={page === null}
    >
      <header className={css.top}>
        <h1>{league === null ? t("title") : league.name}</h1>
        <p className={css.day}>
          <strong>{day.title}</strong>
          <span>{writeDate(day.date, i18n.language)}</span>
        </p>
        <Ticks />
      </header>
      {(page === null || page === 1) && <Totals summary={summary} />}
      <div className={css.body} data-measure="body">
        {children}
      </div>
      <footer className="print-foot">
        <span>{t("paper.foot")}</span>
        <span>{t("paper.page", { page: page ?? 1, pages })}</span>
        <span>{t("common:name")}</span>
      </footer>
    </article>
  );
}

function Totals({ summary }: { readonly summary: Summary }) {
  const { t } = useTranslation("summary");
  const { clearGains: gains, byChance, ...totals } = summary.totals;
  const chance = {
    bestsByChance: Math.round(byChance.bests),
    gainsByChance: Math.round(byChance.clearGains),
  };
  return (
    <p className={css.totals} data-measure="totals">
      {t("paper.totals", { ...totals, gains, ...chance })}
      {summary.day.state !== "closed" && ` ${t("open")}`}
    </p>
  );
}
