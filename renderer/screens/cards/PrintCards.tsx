import { useQuery } from "@tanstack/react-query";
import { memo, useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { usePaperTitle, useReady, useType } from "../../app/ready.ts";
import { useLengthUnit } from "../../words/lengths.ts";
import { CardSheet } from "./CardSheet.tsx";
import { type CardPaper, cardPapers, layOut } from "./papers.ts";
import { type Cards, type WhichCards, whichNamed } from "./which.ts";

interface PrintCardsProps {
  readonly day: string;
  readonly which: string;
  readonly paper: string;
}

/** Lays the cards out for paper; an address that names none renders nothing and is never ready. */
export function PrintCards({ day, which, paper }: PrintCardsProps) {
  const chosen = whichNamed(which);
  const size = cardPapers.find((each) => each === paper);
  if (chosen === null || size === undefined || !/^\d{1,9}$/.test(day)) return null;
  return <Asked dayId={Number(day)} which={chosen} paper={size} />;
}

interface AskedProps {
  readonly dayId: number;
  readonly which: WhichCards;
  readonly paper: CardPaper;
}

function Asked({ dayId, which, paper }: AskedProps) {
  const { t } = useTranslation("cards");
  const trpc = useTRPC();
  const { lengths } = useLengthUnit();
  const { data } = useQuery(trpc.cards.list.queryOptions({ dayId, which, lengths }));
  usePaperTitle(data && t("print-title", { title: data.day.title }));
  if (data === undefined || data.cards.length === 0) return null;
  return <Pile list={data} paper={paper} lengths={lengths} />;
}

interface PileProps {
  readonly list: Cards;
  readonly paper: CardPaper;
  readonly lengths: ReturnType<typeof useLengthUnit>["lengths"];
}

/** Number of sheets laid out at a time, so that the progress can be shown. */
const sheetsAtOnce = 4;

/** Lays out all sheets, a few at a time; the page says how many cards are laid out, and when all are. */
function Pile({ list, paper, lengths }: PileProps) {
  const sheets = layOut(list.cards, paper);
  const [count, setCount] = useState(0);
  const shown = sheets.slice(0, count);
  const all = count >= sheets.length;
  const type = useType(all);
  useLaidOut(shown.flat().filter((card) => card !== null).length, list.cards.length);
  useReady(all && type);
  useEffect(() => {
    if (all) return;
    const timer = setTimeout(() => setCount(count + sheetsAtOnce), 0);
    return () => clearTimeout(timer);
  }, [count, all]);
  return (
    <main>
      {shown.map((cards) => (
        <Laid key={cards[0].athleteId} cards={cards} paper={paper} lengths={lengths} {...datesOf(list)} />
      ))}
    </main>
  );
}

/** A sheet that is not rendered again when more are laid out. */
const Laid = memo(CardSheet, (before, after) => before.cards[0] === after.cards[0]);

function datesOf({ day, next }: Cards): Pick<Cards, "day" | "next"> {
  return { day, next };
}

/** Reports the number of cards laid out, and of all, to the shell: `<html data-done="37" data-total="120">`. */
function useLaidOut(done: number, total: number): void {
  useEffect(() => {
    const { dataset } = document.documentElement;
    dataset.done = String(done);
    dataset.total = String(total);
  }, [done, total]);
}
