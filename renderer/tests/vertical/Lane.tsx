import { useTranslation } from "react-i18next";
import { formatLength } from "../../../electron/domain/units.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { useLaneAtHand } from "../live/chosenLane.ts";
import type { Live, LiveLane } from "../live/tool.ts";
import css from "./Lane.module.css";

interface VerticalLaneViewProps {
  readonly live: Live<"vertical">;
  readonly lane: LiveLane<"vertical">;
}

/** Shows a lane's progress in one line. The work itself is on the stage. */
export function VerticalLaneView({ live, lane }: VerticalLaneViewProps) {
  const { t } = useTranslation(["vertical", "common"]);
  const show = useShowNumber();
  const atHand = useLaneAtHand(live)?.lane === lane.lane;
  const { standingReach, best, trialsLeft } = lane.state;
  return (
    <span className={css.lane} data-here={atHand}>
      {best !== null && (
        <strong>{`${show(formatLength(best, live.lengths))} ${t(`common:unit.${live.lengths}`)}`}</strong>
      )}
      <span>{standingReach === null ? t("live.lane.reach") : t("live.more", { count: trialsLeft })}</span>
    </span>
  );
}
