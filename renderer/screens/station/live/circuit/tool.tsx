import { useTranslation } from "react-i18next";
import type { LiveTool } from "../tool.ts";
import { CircuitDone, CircuitLane } from "./CircuitLane.tsx";
import { askHowFar, keys, round } from "./control.ts";
import { CircuitStage } from "./Stage.tsx";

/** The circuit: one start and one clock, a tap a lane a round. */
export const circuitTool: LiveTool<"endurance"> = {
  Stage: CircuitStage,
  Lane: CircuitLane,
  press: round,
  usePressLabel() {
    const { t } = useTranslation("liveCircuit");
    return ({ lane, in: { who }, state }) => t("tapLane", { lane, bib: who.bib ?? 0, round: state.round });
  },
  second: {
    useLabel: () => useTranslation("liveCircuit").t("notFinished.do"),
    press: askHowFar,
  },
  keys,
  Done: CircuitDone,
  laneWidth: 10.5,
  mostBeside: 4,
};
