import { useTranslation } from "react-i18next";
import { useTestWords } from "../../app/testWords.ts";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { EndBetween } from "../../parts/plan/EndBetween.tsx";
import { roundSpan } from "../../parts/plan/round-span.ts";
import css from "./DayScreen.module.css";
import type { DayForecast, Overview } from "./overview.ts";

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

interface NumbersProps {
  readonly overview: Overview;
  /** Undefined until the first answer is there. */
  readonly forecast: DayForecast | undefined;
}

/** Shows the four numbers of the day: the last one is a span of time, within which it will end. */
export function Numbers({ overview, forecast }: NumbersProps) {
  const { t } = useTranslation("day");
  const { counts, finished, tests } = overview;
  const total = sum(Object.values(counts));
  const elsewhere = total - counts.testing - counts.expected;
  const away = elsewhere === 0 ? [] : [t("numbers.notTesting", { count: elsewhere })];
  const firsts = sum(tests.map((test) => test.firsts));
  return (
    <div className={css.numbers}>
      <BigNumber
        label={t("numbers.here")}
        number={counts.testing}
        unit={t("numbers.of", { total })}
        note={[t("numbers.expected", { count: counts.expected }), ...away].join(" · ")}
      />
      <BigNumber
        label={t("numbers.finished")}
        number={finished}
        unit={t("numbers.finishedOf", { count: counts.testing })}
      />
      <BigNumber
        label={t("numbers.bests")}
        number={sum(tests.map((test) => test.bests))}
        note={t("numbers.firsts", { count: firsts })}
      />
      <Ends forecast={forecast} />
    </div>
  );
}

function Ends({ forecast }: Pick<NumbersProps, "forecast">) {
  const { t } = useTranslation("day");
  const testWord = useTestWords();
  if (forecast?.end == null) {
    const isNone = forecast === null || forecast?.state === "none";
    return (
      <BigNumber label={t("ends.between")} number="–" note={isNone ? t("ends.nobody") : t("ends.working")} />
    );
  }
  const note =
    forecast.holdsUp === null
      ? t("ends.days")
      : t("ends.holdsUp", { test: testWord(forecast.holdsUp, "name") });
  return <EndBetween {...roundSpan(forecast.end, new Date())} note={note} />;
}
