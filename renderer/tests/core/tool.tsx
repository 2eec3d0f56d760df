import { useTranslation } from "react-i18next";
import type { LaneProps, LiveTool } from "../live/tool.ts";
import css from "./Lane.module.css";
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

/** A lane that holds: all there is to do is to stop it, so that is what it says. A word: no sign of a state looks like a test's. */
function CoreLaneView({ live }: LaneProps<"core">) {
  const { t } = useTranslation("core");
  return <span className={`strong ${css.lane}`}>{t(live.elapsedMs < 0 ? "live.ready" : "live.stop")}</span>;
}
