import { useTranslation } from "react-i18next";
import type { LiveTool } from "../live/tool.ts";
import { CoreLaneView } from "./Lane.tsx";
import { CoreStage } from "./Stage.tsx";

/** The staged plank: one clock, and a tap for each lane that comes down. */
export const coreTool: LiveTool<"core"> = {
  Stage: CoreStage,
  Lane: CoreLaneView,
  press(live, { lane, state }, timeStamp) {
    if (state.phase !== "going" || live.clock.elapsedAt(timeStamp) < 0) return;
    live.tap({ lane, kind: "stop", timeStamp });
  },
  usePressLabel() {
    const { t } = useTranslation("core");
    return ({ lane, in: { who } }) => t("live.stopLane", { lane, bib: who.bib ?? 0 });
  },
  laneWidth: 14,
};
