import { useTranslation } from "react-i18next";
import { chooseLane } from "../live/chosenLane.ts";
import type { LiveTool } from "../live/tool.ts";
import { keepStray, keys } from "./control.ts";
import { VerticalLaneView } from "./Lane.tsx";
import { VerticalStage } from "./Stage.tsx";

/** The vertical leap: the stage measures the jumps of one lane, and the lanes select it. */
export const verticalTool: LiveTool<"vertical"> = {
  Stage: VerticalStage,
  Lane: VerticalLaneView,
  press: (live, lane) => chooseLane(live as never, lane as never),
  usePressLabel() {
    const { t } = useTranslation("vertical");
    return ({ lane, in: { who } }) => t("live.lane.choose", { lane, bib: who.bib ?? 0 });
  },
  keys,
  silent: true,
  onStrayDigits: keepStray,
  laneWidth: 11,
};
