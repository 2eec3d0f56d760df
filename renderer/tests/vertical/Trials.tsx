import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { VerticalLane } from "../../../electron/domain/tests/vertical/live.ts";
import { formatLength } from "../../../electron/domain/units.ts";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { useShowNumber } from "../../words/numbers.ts";
import css from "./Trials.module.css";

interface TrialsProps {
  readonly lane: VerticalLane;
  readonly lengths: LengthUnit;
}

/** Shows the best jump so far, large, and every trial in order, future ones too. */
export function Trials({ lane, lengths }: TrialsProps) {
  const { t } = useTranslation(["vertical", "common"]);
  const { heights, best, trialsLeft } = lane;
  const show = useShowNumber();
  const unit = t(`common:unit.${lengths}`);
  const places = [...heights, ...Array.from({ length: trialsLeft }, () => null)];
  const bestAt = heights.indexOf(best ?? Number.NaN);
  return (
    <div className={css.trials}>
      <BigNumber
        size="hero"
        label={best === null ? t("live.noBest") : t("live.best")}
        number={best === null ? "–" : formatLength(best, lengths)}
        {...(best !== null && { unit })}
      />
      <ol className={css.list}>
        {places.map((height, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a trial is its place
          <li key={index} className={css.trial} data-best={index === bestAt} data-open={height === null}>
            <span className={css.name}>{t("live.trial", { number: index + 1 })}</span>
            <span className={css.height}>
              {height === null ? t("live.open") : `${show(formatLength(height, lengths))} ${unit}`}
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}
