import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { usePlaceWords } from "../../parts/marks/PlaceBand.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { HistoryPlot } from "../../parts/plots/HistoryPlot.tsx";
import { useWriteDay } from "../../words/dates.ts";
import { useMarkText, useUnitWord, useVariantName } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { Change } from "./Change.tsx";
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
} as const;

/** Shows the mark's place among others as a band, never as a rank, with the origin of others from elsewhere. */
function Place({ test: { place } }: { readonly test: CardTest }) {
  const { t } = useTranslation("cards");
  const words = usePlaceWords();
  if (place === null) return null;
  const values = { place: words(place), n: place.n, origin: place.origin ?? "" };
  return <p className={css.past}>{t(among[place.group], values)}</p>;
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
