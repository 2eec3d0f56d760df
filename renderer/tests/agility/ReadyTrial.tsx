import { useTranslation } from "react-i18next";
import { trialCountInMs } from "../../../electron/domain/tests/agility/live.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { Row } from "../../parts/flow/Stack.tsx";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps, LiveLane } from "../live/tool.ts";
import { go, goAll, waiting } from "./control.ts";
import css from "./Trial.module.css";

/** Shows, before a trial, the direction, the rest so far, and the key that starts the count-in. */
export function ReadyTrial({ live, lane }: LaneProps<"agility">) {
  const { t } = useTranslation("agility");
  const { next, lastEndMs } = lane.state;
  const together = waiting(live).length;
  if (next === null) return null;
  return (
    <div className={css.trial}>
      <h2 className={css.way}>{t(`live.direction.${next}`)}</h2>
      <p className="quiet measure">
        {t("live.ready.how", { countIn: trialCountInMs / 1000, seconds: live.parameters.seconds })}
      </p>
      {lastEndMs !== null && (
        <Row as="p" gap={4} align="center">
          <span className={css.number}>{formatTime(Math.max(0, live.elapsedMs - lastEndMs), false)}</span>
          <span>
            <strong>{t("live.ready.rest")}</strong>
            <br />
            {t("live.ready.restHow")}
          </span>
        </Row>
      )}
      <Row gap={3} align="center" wrap className={css.keys}>
        <BigKey kind="next" size="huge" hint="Space" onPress={(timeStamp) => go(live, lane, timeStamp)}>
          {t("live.ready.start")}
        </BigKey>
        {together > 1 && (
          <BigKey size="large" hint="A" onPress={(timeStamp) => goAll(live, timeStamp)}>
            {t("live.ready.all", { count: together })}
          </BigKey>
        )}
      </Row>
    </div>
  );
}

/** Shows that both directions are done. */
export function BothIn({ lane }: { readonly lane: LiveLane<"agility"> }) {
  const { t } = useTranslation("agility");
  if (lane.state.phase !== "done") return null;
  return (
    <div className={css.trial}>
      <h2 className={css.way}>{t("live.done.title")}</h2>
    </div>
  );
}
