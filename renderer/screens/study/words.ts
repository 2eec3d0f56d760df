import { useTranslation } from "react-i18next";
import { useTestWords } from "../../app/testWords.ts";
import { useWriteDay } from "../../words/dates.ts";
import { useVariantName } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import type { Amount, Series, StudyLine, Within } from "./types.ts";

/** Formats a number with a minus that is one. */
function plain(number: string): string {
  return number.replace("-", "−");
}

/** Formats a number with its sign. */
export function signed(number: string): string {
  return Number(number) > 0 ? `+${number}` : plain(number);
}

/** Formats an amount with its unit: "1.2 reps". */
export function useAmount(): (amount: Amount) => string {
  const withUnit = useWithUnit();
  return ({ number, unit }) => withUnit(plain(number), unit);
}

/** Formats an amount with its sign and its unit: "+1.2 reps". */
export function useSignedAmount(): (amount: Amount) => string {
  const withUnit = useWithUnit();
  return ({ number, unit }) => withUnit(signed(number), unit);
}

function useWithUnit(): (number: string, unit: Amount["unit"]) => string {
  const { t } = useTranslation("common");
  const show = useShowNumber();
  return (number, unit) =>
    show(`${number} ${t(`counted.${unit}`, { count: Number(number.replace("−", "-")) })}`);
}

/** Returns an estimate and its interval as values of a sentence: the value has its unit, the ends are numbers. */
export function useWithin(): (within: Within) => { value: string; low: string; high: string } {
  const amount = useAmount();
  return ({ value, low, high }) => ({
    value: amount(value),
    low: plain(low.number),
    high: plain(high.number),
  });
}

/** Names a series: by initials, as a day's results, or by the date of the visit. */
export function useSeriesName(): (series: Pick<Series, "judge" | "date" | "day">) => string {
  const { t } = useTranslation("study");
  const writeDay = useWriteDay();
  return ({ judge, date, day }) => {
    if (judge !== "") return judge;
    if (date !== null) return writeDay(date);
    return t("series.ofDay", { date: writeDay(day?.date ?? "") });
  };
}

/** Names a study: "Second judge: Cadence push-up, on the knees". */
export function useStudyName(): (study: Pick<StudyLine, "kind" | "test" | "variant">) => string {
  const { t } = useTranslation("study");
  const testWord = useTestWords();
  const variantName = useVariantName();
  return ({ kind, test, variant }) => {
    const way = [testWord(test, "name"), variantName(variant)].filter((each) => each !== "").join(", ");
    return t(`name.${kind}`, { test: way });
  };
}
