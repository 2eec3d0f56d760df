import { useTranslation } from "react-i18next";
import { trialCountInMs } from "../../../../../electron/domain/tests/agility/live.ts";
import { formatTime } from "../../../../../electron/domain/units.ts";
import { BigKey } from "../BigKey.tsx";
import type { Live, LiveLane } from "../tool.ts";
import { go, goAll, waiting } from "./control.ts";
import css from "./Trial.module.css";

interface ReadyTrialProps {
  readonly live: Live<"agility">;
  readonly lane: LiveLane<"agility">;
}

/** Before a trial: which way, how long they have rested, and the key that starts the count-in. */
export function ReadyTrial({ live, lane }: ReadyTrialProps) {
  const { t } = useTranslation("liveAgility");
  const { next, lastEndMs } = lane.state;
  const together = waiting(live).length;
  if (next === null) return null;
  return (
    <div className={css.trial}>
      <h2 className={css.way}>{t(`direction.${next}`)}</h2>
      <p className={css.how}>
        {t("ready.how", { countIn: trialCountInMs / 1000, seconds: live.parameters.seconds })}
      </p>
      {lastEndMs !== null && (
        <p className={css.rest}>
          <span className={css.number}>{formatTime(Math.max(0, live.elapsedMs - lastEndMs), false)}</span>
          <span>
            <strong>{t("ready.rest")}</strong>
            <br />
            {t("ready.restHow")}
          </span>
        </p>
      )}
      <div className={css.keys}>
        <BigKey kind="next" size="huge" hint="Space" onPress={(timeStamp) => go(live, lane, timeStamp)}>
          {t("ready.start")}
        </BigKey>
        {together > 1 && (
          <BigKey size="large" hint="A" onPress={(timeStamp) => goAll(live, timeStamp)}>
            {t("ready.all", { count: together })}
          </BigKey>
        )}
      </div>
    </div>
  );
}

/** Nothing more to run here. */
export function BothIn({ lane }: { readonly lane: LiveLane<"agility"> }) {
  const { t } = useTranslation("liveAgility");
  if (lane.state.phase !== "done") return null;
  return (
    <div className={css.trial}>
      <h2 className={css.way}>{t("done.title")}</h2>
    </div>
  );
}
