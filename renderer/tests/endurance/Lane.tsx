import { useTranslation } from "react-i18next";
import { useShowNumber } from "../../words/numbers.ts";
import type { LaneProps, StageProps } from "../live/tool.ts";
import { writeSplit } from "./howFar.ts";
import css from "./Lane.module.css";

/** Shows a lane under way: the current round, large, and the rounds done. */
export function EnduranceLaneView({ live, lane }: LaneProps<"endurance">) {
  const { t } = useTranslation("endurance");
  const { rounds } = live.parameters;
  const { round, splits } = lane.state;
  return (
    <span className={css.lane}>
      <span className={css.round}>
        <span className={`quiet ${css.of}`}>{t("live.round")}</span>
        <span className={css.number}>{round}</span>
        <span className={`quiet ${css.of}`}>{t("live.ofRounds", { count: rounds })}</span>
      </span>
      <Splits live={live} splits={splits} />
    </span>
  );
}

/** Keeps the rounds of a finished lane visible. */
export function EnduranceDone({ live, lane }: LaneProps<"endurance">) {
  return <Splits live={live} splits={lane.state.splits} />;
}

interface SplitsProps extends StageProps<"endurance"> {
  readonly splits: readonly number[];
}

/** Shows the end of each round, by the heat's clock. */
function Splits({ live, splits }: SplitsProps) {
  const { t } = useTranslation("endurance");
  const show = useShowNumber();
  return (
    <span className={css.splits}>
      {Array.from({ length: live.parameters.rounds }, (_none, index) => {
        const split = splits[index];
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a split is its round
          <span key={index} className={`small quiet ${css.split}`} data-done={split !== undefined}>
            <span>{t("live.split", { round: index + 1 })}</span>
            <span className="strong">
              {split === undefined ? "–" : show(writeSplit(live.parameters, split))}
            </span>
          </span>
        );
      })}
    </span>
  );
}
