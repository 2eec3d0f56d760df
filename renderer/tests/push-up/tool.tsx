import { useTranslation } from "react-i18next";
import type { LiveTool } from "../live/tool.ts";
import { keys, mark, stop } from "./control.ts";
import { PushUpLaneView } from "./Lane.tsx";
import { LastRep, LastRepAnswers } from "./LastRep.tsx";
import { PushUpStage } from "./Stage.tsx";

/** The cadence push-up: one beat for all lanes, and a tap for each missed rep. */
export const pushUpTool: LiveTool<"push-up"> = {
  Stage: PushUpStage,
  Lane: PushUpLaneView,
  Done: LastRep,
  answers: ({ live, lane }) =>
    lane.state.doubt === null ? null : <LastRepAnswers live={live} lane={lane} />,
  press: mark,
  usePressLabel() {
    const { t } = useTranslation("push-up");
    return ({ lane, in: { who }, state: { atHand, cadences } }) =>
      t(cadences[atHand - 1] === "x" ? "live.markOn" : "live.markOff", {
        lane,
        bib: who.bib ?? 0,
        cadence: atHand,
      });
  },
  second: {
    useLabel: () => useTranslation("push-up").t("live.stop"),
    press: stop,
  },
  keys,
  isWarning: ({ state }) => state.warning,
  laneWidth: 16,
};
