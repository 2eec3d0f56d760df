import { useTranslation } from "react-i18next";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { writeTime } from "../../words/dates.ts";
import css from "./DayScreen.module.css";
import type { Overview } from "./overview.ts";

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Returns the instant, or now if it has passed: the day has not ended yet. */
function notPast(instant: string | null): string | null {
  const now = new Date().toISOString();
  return instant !== null && instant < now ? now : instant;
}

/** Shows the four numbers of the day. */
export function Numbers({ overview }: { readonly overview: Overview }) {
  const { t, i18n } = useTranslation("day");
  const { counts, finished, tests } = overview;
  const endsAbout = notPast(overview.endsAbout);
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
      <BigNumber
        label={t("numbers.ends")}
        number={endsAbout === null ? "–" : writeTime(endsAbout, i18n.language)}
        note={endsAbout === null ? t("numbers.endsNone") : t("numbers.pace")}
      />
    </div>
  );
}
