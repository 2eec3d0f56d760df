import { useTranslation } from "react-i18next";
import { BigClock } from "../live/BigClock.tsx";
import type { StageProps } from "../live/tool.ts";
import { useStopped } from "./control.ts";
import { HowFar } from "./HowFar.tsx";
import { Order } from "./Order.tsx";
import css from "./Stage.module.css";

/** Shows one clock for everybody, without tenths: it runs and hurries nobody. Beside it the order of a round. */
export function EnduranceStage({ live }: StageProps<"endurance">) {
  const { t } = useTranslation("endurance");
  const asked = useStopped(live);
  return (
    <div className={css.stage} data-test="endurance">
      <div className={css.clock}>
        <BigClock clock={live.clock} />
      </div>
      {asked === null ? (
        <div className={css.order}>
          <p className={css.how}>{t("live.how")}</p>
          <Order exercises={live.parameters.exercises} />
        </div>
      ) : (
        <HowFar live={live} lane={asked.lane} reps={asked.stopped.reps} />
      )}
    </div>
  );
}
