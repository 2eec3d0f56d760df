import { useTranslation } from "react-i18next";
import { chooseLane } from "../chosenLane.ts";
import type { LiveTool } from "../tool.ts";
import { keepStray, keys } from "./control.ts";
import { LeapLaneView } from "./LeapLaneView.tsx";
import { LeapStage } from "./Stage.tsx";

/** The vertical leap: the stage measures the jumps of one lane, the lanes choose whose. */
export const leapTool: LiveTool<"vertical"> = {
  Stage: LeapStage,
  Lane: LeapLaneView,
  press: (live, lane) => chooseLane(live as never, lane as never),
  usePressLabel() {
    const { t } = useTranslation("liveLeap");
    return ({ lane, in: { who } }) => t("lane.choose", { lane, bib: who.bib ?? 0 });
  },
  keys,
  onStrayDigits: keepStray,
  laneWidth: 11,
};
