import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import { useWriteDay } from "../../words/dates.ts";
import { useWriteChange } from "../../words/marks.ts";
import css from "./TestRow.module.css";
import type { CardTest } from "./which.ts";

interface ChangeProps {
  readonly test: CardTest;
  readonly lengths: LengthUnit;
}

type News = NonNullable<NonNullable<CardTest["told"]>["news"]>;
type Verdict = NonNullable<News["verdict"]>;

/** Shows the verdict on a mark's change in words and as a shape, then the last and the best mark before it. */
export function Change({ test, lengths }: ChangeProps) {
  const { t } = useTranslation("cards");
  const writeChange = useWriteChange(test.test, lengths);
  const news = test.told?.news ?? null;
  if (news === null) return <p>{t("card.past.unfinished")}</p>;
  const { change, verdict } = news;
  if (change === null || verdict === null) return <p>{t("card.past.first")}</p>;
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
    </>
  );
}

/** Shows the marks that this one was compared with, without the unit, which is beside it. */
function Past({ test, news, lengths }: ChangeProps & { readonly news: News }) {
  const { t } = useTranslation("cards");
  const writeDay = useWriteDay();
  const { standing, previous, previousDate, bestBefore } = news;
  if (previous === null || previousDate === null || bestBefore === null) return null;
  const { write } = protocolOf(test.test);
  const values = { last: write(previous, lengths).number, best: write(bestBefore, lengths).number };
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
