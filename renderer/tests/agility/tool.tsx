import { useTranslation } from "react-i18next";
import { chooseLane } from "../live/chosenLane.ts";
import type { LiveTool } from "../live/tool.ts";
import { keys } from "./control.ts";
import { AgilityLaneView } from "./Lane.tsx";
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
  laneWidth: 11,
};
