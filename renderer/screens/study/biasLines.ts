import { useTranslation } from "react-i18next";
import type { Result, StudyView } from "./types.ts";
import { signed, useAmount, useSeriesName, useSignedAmount } from "./words.ts";

/** One series' bias in words. */
export interface BiasLine {
  readonly name: string;
  readonly bias: string;
  readonly range: string;
  readonly says: string;
}

/** Returns a line for each judge; of two visits one alone, since the other would say the same turned round. */
export function useBiasLines({ study, series, matters }: StudyView, { biases }: Result): BiasLine[] {
  const { t } = useTranslation("study");
  const nameOf = useSeriesName();
  const amount = useAmount();
  const signedAmount = useSignedAmount();
  return biases.flatMap(({ value, low, high, word }, at): BiasLine[] => {
    const each = series[at];
    if (each === undefined || (study.kind === "visits" && at === 0)) return [];
    const [name, number] = [nameOf(each), amount({ ...value, number: value.number.replace("-", "") })];
    return [
      {
        name,
        bias: signedAmount(value),
        range: t("bias.fromTo", { low: signed(low.number), high: signed(high.number) }),
        says: t(`bias.word.${study.kind}.${word}`, { name, amount: number, matters: amount(matters) }),
      },
    ];
  });
}
