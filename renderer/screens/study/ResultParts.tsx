import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Select } from "../../parts/controls/Select.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { isWideShare } from "../../words/wide.ts";
import { Agreement } from "./Agreement.tsx";
import { BiasTable } from "./BiasTable.tsx";
import { PartsTable } from "./PartsTable.tsx";
import css from "./Study.module.css";
import type { Result, ResultProps, StudyView } from "./types.ts";
import { useAmount, useSeriesName, useWithin } from "./words.ts";

/** Shows what a study has found: the numbers, who reads higher, the picture, and where the differences come from. */
export function ResultParts({ study, result }: ResultProps) {
  const { t } = useTranslation("study");
  return (
    <>
      <Section title={t("result.title")}>
        <Numbers study={study} result={result} />
      </Section>
      <Section title={t(`bias.title.${study.study.kind}`)}>
        <BiasTable study={study} result={result} />
      </Section>
      <Section title={t("picture.title")}>
        <Pictures study={study} result={result} />
      </Section>
      <Section title={t("parts.title")}>
        <PartsTable study={study} result={result} />
      </Section>
    </>
  );
}

function Numbers({ study, result }: ResultProps) {
  const { t } = useTranslation(["study", "common"]);
  const { value } = result.typicalError;
  const percent = result.icc === null ? null : Math.round(100 * Math.max(0, result.icc.value));
  return (
    <div className={css.numbers}>
      <BigNumber
        label={t("result.error")}
        number={value.number}
        unit={t(`common:counted.${value.unit}`, { count: Number(value.number) })}
      />
      <BigNumber label={t("result.icc")} number={percent === null ? "–" : percent} unit="%" />
      <Facts study={study} result={result} />
    </div>
  );
}

/** Says the numbers in plain words, and how many more athletes are needed. */
export function Facts({ study, result }: ResultProps) {
  const facts = useFacts(study, result);
  return (
    <ul className={css.facts}>
      {facts.map((fact) => (
        <li key={fact}>{fact}</li>
      ))}
    </ul>
  );
}

function useFacts({ study: { kind }, matters }: StudyView, result: Result): string[] {
  const { t } = useTranslation("study");
  const within = useWithin();
  const amount = useAmount();
  const { typicalError, icc, more } = result;
  const share = (part: number) => Math.round(100 * Math.max(0, part));
  const facts = [t(`result.errorMeans.${kind}`, within(typicalError))];
  if (icc !== null) {
    const [percent, low, high] = [share(icc.value), share(icc.low), share(icc.high)];
    const means = t(`result.iccMeans.${kind}`, { percent, low, high });
    facts.push(isWideShare(icc) ? `${means} ${t(`result.iccWide.${kind}`)}` : means);
  }
  facts.push(
    more.forError === 0 || more.forError === null
      ? t("result.enoughError")
      : t("result.moreError", { count: more.forError }),
  );
  const bias = { matters: amount(matters) };
  if (more.forBias === null) facts.push(t(`result.neverBias.${kind}`, bias));
  else if (more.forBias === 0) facts.push(t(`result.enoughBias.${kind}`, bias));
  else facts.push(t(`result.moreBias.${kind}`, { ...bias, count: more.forBias }));
  return facts;
}

/** Shows the picture of one pair of series; of more than two series, the one that is chosen. */
function Pictures({ study, result }: ResultProps) {
  const { t } = useTranslation("study");
  const nameOf = useSeriesName();
  const [chosen, setChosen] = useState(0);
  const pair = result.pairs[chosen] ?? result.pairs[0];
  const name = (at: number) => nameOf(study.series[at] ?? { judge: "", date: null, day: null });
  if (pair === undefined) return null;
  return (
    <>
      {result.pairs.length > 1 && (
        <Select label={t("picture.which")} value={chosen} onChange={setChosen}>
          {result.pairs.map(({ first, second }, at) => (
            <option key={`${first} ${second}`} value={at}>
              {t("picture.pair", { one: name(first), other: name(second) })}
            </option>
          ))}
        </Select>
      )}
      <Agreement study={study} pair={pair} />
    </>
  );
}
