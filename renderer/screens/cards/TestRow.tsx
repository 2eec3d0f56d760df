import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { usePlaceWords } from "../../parts/marks/PlaceLine.tsx";
import { placeAmong } from "../../parts/marks/placeTold.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { HistoryPlot } from "../../parts/plots/HistoryPlot.tsx";
import { useWriteDay } from "../../words/dates.ts";
import { useMarkText, useUnitWord, useVariantName, useWriteChange } from "../../words/marks.ts";
import { useShowNumber, writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import css from "./TestRow.module.css";
import type { CardTest } from "./which.ts";

interface TestRowProps {
  readonly test: CardTest;
  readonly lengths: LengthUnit;
}

/** Shows one test: its mark, the mark's standing in the athlete's own past, and that past as a plot. */
export function TestRow({ test, lengths }: TestRowProps) {
  const testWord = useTestWords();
  const { test: code, points, noise } = test;
  return (
    <li className={css.row} data-test={code}>
      <div className={css.sign} aria-hidden="true">
        <TestMark test={code} />
      </div>
      <Stack top className={css.words}>
        <h2>
          {testWord(code, "ability")} <How test={test} />
        </h2>
        {test.told === null ? <NotTaken test={test} /> : <Taken test={test} lengths={lengths} />}
      </Stack>
      <div className={css.plot}>
        {points.length > 0 && (
          <HistoryPlot test={code} points={points} noise={noise} size="card" lengths={lengths} />
        )}
      </div>
    </li>
  );
}

/** Names the test, the variant, and the stage that a plank reached. */
function How({ test: { test, variant, told, points } }: { readonly test: CardTest }) {
  const testWord = useTestWords();
  const say = useSay();
  const way = useVariantName();
  const done = told !== null || points.length > 0;
  const { number = "", note } = told?.written ?? {};
  const parts = [
    testWord(test, "name"),
    done ? way(variant) : "",
    number !== "" && note !== undefined ? say(note) : "",
  ];
  return <small>{parts.filter((part) => part !== "").join(", ")}</small>;
}

function Taken({ test, lengths }: TestRowProps) {
  const { t } = useTranslation(["cards", "common"]);
  const say = useSay();
  const way = useVariantName();
  const markText = useMarkText();
  const unitWord = useUnitWord();
  const show = useShowNumber();
  if (test.told === null) return null;
  const { number, unit, note } = test.told.written;
  return (
    <>
      <p className={css.mark}>
        {number !== "" && <strong className={css.number}>{show(number)}</strong>}{" "}
        {unitWord(unit) !== "" && <span>{unitWord(unit, number)} </span>}
        {number === "" && note !== undefined && <span className={css.instead}>{say(note)} </span>}
        <Standing test={test} />
      </p>
      <Change test={test} lengths={lengths} />
      <Place test={test} />
      {test.also.map(({ variant, written }) => (
        <p key={variant}>{t("card.also", { mark: markText(written), way: way(variant) })}</p>
      ))}
    </>
  );
}

/** Shows the few words that make an athlete hang the card up; none for a mark below the best. */
function Standing({ test: { told } }: { readonly test: CardTest }) {
  const { t } = useTranslation("cards");
  const standing = told?.news?.standing;
  if (standing === undefined || standing === "below") return null;
  return (
    <span className={css.standing} data-standing={standing}>
      {t(`card.standing.${standing}`)}
    </span>
  );
}

const among = {
  today: "card.place.here",
  store: "card.place.here",
  imported: "card.place.imported",
  mixed: "card.place.mixed",
  table: "card.place.table",
  tableMixed: "card.place.tableMixed",
} as const;

/** Shows the mark's place among others as a band, never as a rank, with the origin of others from elsewhere. */
function Place({ test: { place } }: { readonly test: CardTest }) {
  const { t, i18n } = useTranslation(["cards", "place"]);
  const words = usePlaceWords();
  if (place === null) return null;
  const number = (count: number) => writeNumber(count, i18n.language);
  const others = { n: number(place.n), halls: number(place.halls ?? 0), origin: place.origin ?? "" };
  const ofAges = place.halls === null ? "card.place.ages" : "card.place.tableAges";
  const told = t(place.ages === null ? among[placeAmong(place)] : ofAges, {
    ...{ place: words(place), ...others, ...place.ages },
  });
  return <p className={css.past}>{place.end === null ? told : `${told}. ${t(`place:end.${place.end}`)}`}</p>;
}

function NotTaken({ test: { points, best } }: { readonly test: CardTest }) {
  const { t } = useTranslation("cards");
  const writeDay = useWriteDay();
  const last = points.at(-1);
  return (
    <>
      <p className={css.mark}>
        <span className={css.instead}>{t("card.notTaken")}</span>
      </p>
      {last === undefined || best === null ? (
        <p>{t("card.past.none")}</p>
      ) : (
        <p>
          {t("card.past.notTaken", {
            ...{ last: last.written.number, date: writeDay(last.date), best: best.number },
          })}
        </p>
      )}
    </>
  );
}

interface ChangeProps {
  readonly test: CardTest;
  readonly lengths: LengthUnit;
}

type News = NonNullable<NonNullable<CardTest["told"]>["news"]>;
type Verdict = NonNullable<News["verdict"]>;

/** Shows the verdict on a mark's change in words and as a shape, then what it was compared with and the best before. */
function Change({ test, lengths }: ChangeProps) {
  const { t } = useTranslation("cards");
  const say = useSay();
  const writeChange = useWriteChange(test.test, lengths);
  const news = test.told?.news ?? null;
  const beside = (test.told?.beside ?? []).map((each) => say(each)).join(" ");
  if (news === null) return <p>{beside || t("card.past.unfinished")}</p>;
  const { change, verdict } = news;
  if (news.previous === null) return <p>{beside || t("card.past.first")}</p>;
  if (change === null || verdict === null) return <p>{beside}</p>;
  return (
    <>
      <p className={css.change}>
        <VerdictSign verdict={verdict} />
        <span>
          <strong>{t(`card.verdict.${verdict}`)}</strong>:{" "}
          {change === 0 ? t("card.same") : writeChange(change)}
        </span>
      </p>
      <Past test={test} news={news} lengths={lengths} />
      {beside !== "" && <p className={css.past}>{beside}</p>}
    </>
  );
}

/** Shows the marks that this one was compared with, without the unit, which is beside it. */
function Past({ test, news, lengths }: ChangeProps & { readonly news: News }) {
  const { t } = useTranslation("cards");
  const writeDay = useWriteDay();
  const { standing, earlier, level, previous, previousDate, bestBefore } = news;
  if (previous === null || previousDate === null || bestBefore === null || level === null) return null;
  const { write } = protocolOf(test.test);
  const values = { last: write(previous, lengths).number, best: write(bestBefore, lengths).number };
  if (earlier > 1) {
    const told = { level: write(level, lengths).number, results: earlier, best: values.best };
    return (
      <p className={css.past}>{t(standing === "best" ? "card.level.best" : "card.level.below", told)}</p>
    );
  }
  return (
    <p className={css.past}>{t(`card.past.${standing}`, { ...values, date: writeDay(previousDate) })}</p>
  );
}

/** Shapes of the verdicts: chevrons up for a gain, down for a loss, two when clear, one when likely; noise is flat. */
const shapes: Readonly<Record<Verdict, string>> = {
  "clear gain": "M1 6.5 6 1.5l5 5M1 11.5l5-5 5 5",
  "likely gain": "M1 9l5-5 5 5",
  noise: "M.5 4.5h11M.5 7.5h11",
  "likely loss": "M1 3l5 5 5-5",
  "clear loss": "M1 .5l5 5 5-5M1 5.5l5 5 5-5",
};

function VerdictSign({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg className={css.verdict} viewBox="0 0 12 12" aria-hidden="true">
      <path d={shapes[verdict]} />
    </svg>
  );
}
