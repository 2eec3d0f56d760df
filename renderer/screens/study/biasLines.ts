import { useTranslation } from "react-i18next";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import type { Result, StudyView } from "./types.ts";
import { signed, useAmount, useSeriesName, useSignedAmount } from "./words.ts";

/** One series' bias in words. */
export interface BiasLine {
  readonly name: string;
  readonly bias: string;
  readonly range: string;
  readonly says: string;
}

/** Returns a line for each judge; of two judges or visits one alone, since the other would say the same turned round. */
export function useBiasLines({ study, series, matters }: StudyView, { biases }: Result): BiasLine[] {
  const { t } = useTranslation("study");
  const nameOf = useSeriesName();
  const amount = useAmount();
  const signedAmount = useSignedAmount();
  return biases.flatMap(({ value, low, high, word }, at): BiasLine[] => {
    const each = series[at];
    if (each === undefined || (series.length === 2 && at === 0)) return [];
    const other = study.kind === "judges" && series.length === 2 ? series[0] : undefined;
    const own = nameOf(each);
    const name = other === undefined ? own : t("bias.against", { name: own, other: nameOf(other) });
    const number = amount({ ...value, number: value.number.replace("-", "") });
    // A judge who is generous gives a better result, which of a time to finish in is a lower one.
    const manner = t(word === protocolOf(study.test).better ? "bias.generous" : "bias.stricter");
    const values = { manner, judge: own, amount: number, matters: amount(matters) };
    return [
      {
        name,
        bias: signedAmount(value),
        range: t("bias.fromTo", { low: signed(low.number), high: signed(high.number) }),
        says: t(`bias.word.${study.kind}.${word}`, values),
      },
    ];
  });
}
