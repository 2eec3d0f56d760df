import { useTranslation } from "react-i18next";
import { useLaneAtHand } from "../live/chosenLane.ts";
import type { Live, LiveLane } from "../live/tool.ts";
import css from "./Lane.module.css";

interface AgilityLaneViewProps {
  readonly live: Live<"agility">;
  readonly lane: LiveLane<"agility">;
}

/** Shows a lane's progress in one line. The work itself is on the stage. */
export function AgilityLaneView({ live, lane }: AgilityLaneViewProps) {
  const { t } = useTranslation("agility");
  const atHand = useLaneAtHand(live)?.lane === lane.lane;
  const { trial, next, counted } = lane.state;
  const direction = trial?.direction ?? next;
  return (
    <span className={css.lane} data-here={atHand}>
      {direction !== null && <strong>{t(`live.direction.${direction}`)}</strong>}
      <span>
        {trial !== null ? t(`live.lane.${trial.stage}`) : t("live.lane.in", { count: counted.length })}
      </span>
    </span>
  );
}
