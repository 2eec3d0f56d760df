import { memo, type ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { wordingOf } from "../../../electron/domain/cards/tone.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { writeDate } from "../../words/dates.ts";
import css from "./Card.module.css";
import { Focus } from "./Focus.tsx";
import { useFit } from "./fit.ts";
import { NextTest } from "./NextTest.tsx";
import { TestRow } from "./TestRow.tsx";
import type { CardData, Cards } from "./which.ts";

interface CardProps {
  readonly card: CardData;
  readonly day: Cards["day"];
  readonly next: Cards["next"];
  readonly size: "a5" | "half-letter";
  readonly lengths: LengthUnit;
}

/** Lays out one athlete's card at its paper's size, on the screen as in print. Nothing but their own marks is on it. */
export const Card = memo(function Card({ card, day, next, size, lengths }: CardProps) {
  const { t } = useTranslation("cards");
  const paper = useFit();
  return (
    <article ref={paper} className={css.card} data-size={size}>
      <Head card={card} day={day} />
      <p className={css.tone}>{t(`card.tone.${card.tone}.${turnOf(card.athleteId, day.date)}`)}</p>
      <ol className={css.tests}>
        {card.tests.map((test) => (
          <TestRow key={test.test} test={test} lengths={lengths} />
        ))}
      </ol>
      <Notes card={card} />
      <div className={css.after}>
        <Focus focus={card.focus} />
        <NextTest next={next} />
      </div>
      <p className={css.caution}>{t("card.caution")}</p>
    </article>
  );
});

const wordings = ["0", "1", "2"] as const;

function turnOf(athleteId: number, date: string): (typeof wordings)[number] {
  return wordings[wordingOf(athleteId, date, wordings.length)] ?? "0";
}

function Head({ card, day }: Pick<CardProps, "card" | "day">) {
  const { t, i18n } = useTranslation(["cards", "common"]);
  const { name, number, league, bib } = card;
  return (
    <header className={css.head}>
      <Tape>
        <span>{writeDate(day.date, i18n.language)}</span>
        <span className={`one-line ${css.dayTitle}`}>{day.title}</span>
      </Tape>
      <div className={css.who}>
        <h1 data-length={lengthOf(name)}>{name}</h1>
        <p className={css.facts} data-length={lengthOf(league)}>
          {league}
          {bib !== null && <span>{t("card.bib", { bib })}</span>}
        </p>
      </div>
      {number !== "" && (
        <p className={css.number}>
          <span className="unseen">{t("card.number")} </span>
          {number}
        </p>
      )}
    </header>
  );
}

/** Returns the class of a name's length: long names are set smaller rather than cut. */
function lengthOf(name: string): "short" | "long" | "longest" {
  if (name.length <= 18) return "short";
  return name.length <= 40 ? "long" : "longest";
}

/** Explains how to read the pictures, and the source of the band and the places. */
function Notes({ card: { tests } }: { readonly card: CardData }) {
  const { t } = useTranslation("cards");
  const placed = placedAmong(tests);
  const drawn = tests.some(({ points }) => points.length > 1);
  return (
    <div className={css.notes}>
      {drawn && <p>{t(`card.noise.${noiseKind(tests)}`)}</p>}
      {placed !== null && <p>{t(`card.places.${placed}`)}</p>}
    </div>
  );
}

function noiseKind(tests: CardData["tests"]): "none" | "assumed" | "partly" | "measured" {
  const banded = tests.filter(({ noise }) => noise !== null);
  const assumed = banded.filter((test) => test.assumed).length;
  if (banded.length === 0) return "none";
  if (assumed === banded.length) return "assumed";
  return assumed === 0 ? "measured" : "partly";
}

function placedAmong(tests: CardData["tests"]): "here" | "imported" | "both" | null {
  const groups = tests.flatMap(({ place }) => place?.group ?? []);
  if (groups.length === 0) return null;
  const elsewhere = groups.filter((group) => group === "imported" || group === "mixed").length;
  if (elsewhere === 0) return "here";
  return elsewhere === groups.length ? "imported" : "both";
}

/** Draws a strip of measuring tape with ticks along its lower edge: decoration, never a scale. */
function Tape({ children }: { readonly children: ReactNode }) {
  return <div className={css.tape}>{children}</div>;
}
