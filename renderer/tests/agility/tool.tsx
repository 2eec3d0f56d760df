import { useTranslation } from "react-i18next";
import { chooseLane, useLaneAtHand } from "../live/chosenLane.ts";
import css from "../live/Lane.module.css";
import type { LaneProps, LiveTool } from "../live/tool.ts";
import { keys } from "./control.ts";
import { AgilityStage } from "./Stage.tsx";

/** The quadrant jump: the stage runs the trial of one lane, and the lanes select it. */
export const agilityTool: LiveTool<"agility"> = {
  Stage: AgilityStage,
  Lane: AgilityLaneView,
  press: (live, lane) => chooseLane(live as never, lane as never),
  usePressLabel() {
    const { t } = useTranslation("agility");
    return ({ lane, in: { who } }) => t("live.lane.choose", { lane, bib: who.bib ?? 0 });
  },
  keys,
  digits: "typed",
  laneWidth: 11,
};

/** Shows a lane's progress in one line. The work itself is on the stage. */
function AgilityLaneView({ live, lane }: LaneProps<"agility">) {
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
