import { useTranslation } from "react-i18next";
import { chooseLane } from "../chosenLane.ts";
import type { LiveTool } from "../tool.ts";
import { AgilityLaneView } from "./AgilityLaneView.tsx";
import { keys } from "./control.ts";
import { AgilityStage } from "./Stage.tsx";

/** The quadrant jump: the stage runs the trial of one lane, the lanes choose which. */
export const agilityTool: LiveTool<"agility"> = {
  Stage: AgilityStage,
  Lane: AgilityLaneView,
  press: (live, lane) => chooseLane(live as never, lane as never),
  usePressLabel() {
    const { t } = useTranslation("liveAgility");
    return ({ lane, in: { who } }) => t("lane.choose", { lane, bib: who.bib ?? 0 });
  },
  keys,
  laneWidth: 11,
};
