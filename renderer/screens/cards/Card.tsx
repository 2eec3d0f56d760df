import { memo, type ReactNode, useId } from "react";
import { useTranslation } from "react-i18next";
import { wordingOf } from "../../../electron/domain/cards/tone.ts";
import { windowWeeks } from "../../../electron/domain/cards/window.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useTestWords } from "../../app/testWords.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useWriteSpan, writeDate } from "../../words/dates.ts";
import afterCss from "./After.module.css";
import css from "./Card.module.css";
import { useFit } from "./fit.ts";
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
      <p className={css.tone}>
        {t(`card.tone.${card.tone}.${turnOf(card.athleteId, day.date)}`)}
        {card.besides !== null && <span className={css.besides}> {t(`card.besides.${card.besides}`)}</span>}
      </p>
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
          <span className={css.numberOf}>{t("card.number")} </span>
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

/** Shows the two dates between which the next test is worth taking, with the weeks until then on a tape. */
function NextTest({ next: { from, until } }: { readonly next: Cards["next"] }) {
  const { t } = useTranslation("cards");
  const writeSpan = useWriteSpan();
  const id = useId();
  return (
    <section className={afterCss.part} aria-labelledby={id}>
      <h2 id={id}>{t("card.next.title")}</h2>
      <p className={afterCss.chief}>{writeSpan(from, until)}</p>
      <Weeks />
      <p>{t("card.next.weeks", { ...windowWeeks })}</p>
    </section>
  );
}

/** Length of a week in units of the drawing. */
const week = 10;
const named = [4, 8, windowWeeks.from, windowWeeks.until];

function Weeks() {
  const { t } = useTranslation("cards");
  const { from, until } = windowWeeks;
  return (
    <svg className={afterCss.weeks} viewBox="-2 0 182 26" aria-hidden="true">
      <rect className={afterCss.window} x={from * week} y={1} width={(until - from) * week} height={13} />
      <path d={`M0 1h${until * week}M0 14h${until * week}`} />
      {Array.from({ length: until + 1 }, (_none, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the weeks of a tape never change their order
        <path key={index} d={`M${index * week} 14v${index % 4 === 0 || index >= from ? -8 : -4}`} />
      ))}
      <text x={0} y={24} textAnchor="start">
        {t("card.next.today")}
      </text>
      {named.map((weeks) => (
        <text key={weeks} x={weeks * week} y={24} textAnchor="middle">
          {weeks}
        </text>
      ))}
    </svg>
  );
}

/** Names what to work on until the next test, the reason, and a first idea how. */
function Focus({ focus }: { readonly focus: CardData["focus"] }) {
  const { t } = useTranslation(["cards", "common"]);
  const testWord = useTestWords();
  const id = useId();
  return (
    <section className={afterCss.part} aria-labelledby={id}>
      <h2 id={id}>{t("card.focus.title")}</h2>
      {focus.kind === "test" ? (
        <>
          <p className={afterCss.chief}>
            <TestMark test={focus.test} size="small" name="ability" />
          </p>
          <p>
            {t(`card.focus.${focus.by}`)} {testWord(focus.test, "hint")}
          </p>
        </>
      ) : (
        <>
          <p className={afterCss.chief}>{t("card.focus.even")}</p>
          <p>
            {t(`card.focus.${focus.why}`)} {t("card.hint.even")}
          </p>
        </>
      )}
    </section>
  );
}
