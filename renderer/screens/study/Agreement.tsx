import { useTranslation } from "react-i18next";
import { AgreementPlot } from "../../parts/plots/AgreementPlot.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import type { Result, StudyView } from "./types.ts";
import { signed, useSeriesName } from "./words.ts";

interface AgreementProps {
  readonly study: StudyView;
  readonly pair: Result["pairs"][number];
}

/** Shows how far two readings of one athlete differ: the picture, and the same in words. */
export function Agreement({ study: { study, series }, pair }: AgreementProps) {
  const { t } = useTranslation(["study", "common"]);
  const { lengths } = useLengthUnit();
  const nameOf = useSeriesName();
  const name = (at: number) => nameOf(series[at] ?? { judge: "", date: null, day: null });
  const { points, lines, bias, lower, upper } = pair;
  const [one, other] = [name(pair.first), name(pair.second)];
  const limits = { low: signed(lower.value.number), high: signed(upper.value.number) };
  const unit = t(`common:counted.${bias.value.unit}`, { count: 2 });
  const summary = t("picture.summary", { one, other, ...limits, count: points.length });
  const ends = (within: typeof lower) => ({
    from: signed(within.low.number),
    to: signed(within.high.number),
  });
  return (
    <>
      <p className="measure">
        {t("picture.limits", { one, other, ...limits, unit, bias: signed(bias.value.number) })}
      </p>
      <AgreementPlot
        test={study.test}
        points={points}
        lines={lines}
        lengths={lengths}
        summary={summary}
        up={t("picture.up", { one, other })}
        across={t("picture.across")}
      />
      <p className="small quiet measure">
        {t("picture.sure", {
          lowFrom: ends(lower).from,
          lowTo: ends(lower).to,
          highFrom: ends(upper).from,
          highTo: ends(upper).to,
        })}
      </p>
    </>
  );
}
