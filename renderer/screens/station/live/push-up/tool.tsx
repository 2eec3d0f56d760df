import { useTranslation } from "react-i18next";
import type { LiveTool } from "../tool.ts";
import { mark, stop } from "./control.ts";
import { PushUpLaneView } from "./PushUpLaneView.tsx";
import { PushUpStage } from "./Stage.tsx";

/** The cadence push-up: one beat for all lanes, a tap for what is off. */
export const pushUpTool: LiveTool<"push-up"> = {
  Stage: PushUpStage,
  Lane: PushUpLaneView,
  press: mark,
  usePressLabel() {
    const { t } = useTranslation("livePushUp");
    return ({ lane, in: { who }, state: { atHand, cadences } }) =>
      t(cadences[atHand - 1] === "x" ? "markOn" : "markOff", { lane, bib: who.bib ?? 0, cadence: atHand });
  },
  second: {
    useLabel: () => useTranslation("livePushUp").t("stop"),
    press: stop,
  },
  isWarning: ({ state }) => state.warning,
  laneWidth: 16,
};
