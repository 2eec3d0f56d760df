import { useTranslation } from "react-i18next";
import type { LiveTool } from "../live/tool.ts";
import { askHowFar, keys, round } from "./control.ts";
import { EnduranceDone, EnduranceLaneView } from "./Lane.tsx";
import { EnduranceStage } from "./Stage.tsx";

/** The circuit: one start and one clock, one tap per lane and round. */
export const enduranceTool: LiveTool<"endurance"> = {
  Stage: EnduranceStage,
  Lane: EnduranceLaneView,
  press: round,
  usePressLabel() {
    const { t } = useTranslation("endurance");
    return ({ lane, in: { who }, state }) =>
      t("live.tapLane", { lane, bib: who.bib ?? 0, round: state.round });
  },
  second: {
    useLabel: () => useTranslation("endurance").t("live.notFinished.do"),
    press: askHowFar,
  },
  keys,
  Done: EnduranceDone,
  laneWidth: 10.5,
  mostBeside: 4,
  slim: true,
};
