import { useTranslation } from "react-i18next";
import { grainsOf, type Length } from "../../../electron/domain/length.ts";
import { formatLength } from "../../../electron/domain/units.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { chooseLane, useLaneAtHand } from "../live/chosenLane.ts";
import css from "../live/Lane.module.css";
import type { LaneProps, LiveTool } from "../live/tool.ts";
import { keepStray, keys } from "./control.ts";
import { bestOf, heightsOf } from "./heights.ts";
import { JumpsDone } from "./Jumped.tsx";
import { VerticalStage } from "./Stage.tsx";

/** The vertical leap: the stage measures the jumps of one lane, and the lanes select it. */
export const verticalTool: LiveTool<"vertical"> = {
  Stage: VerticalStage,
  Lane: VerticalLaneView,
  Done: JumpsDone,
  press: (live, lane) => chooseLane(live as never, lane as never),
  usePressLabel() {
    const { t } = useTranslation("vertical");
    return ({ lane, in: { who } }) => t("live.lane.choose", { lane, bib: who.bib ?? 0 });
  },
  keys,
  lengthOf({ kind, detail }) {
    if (kind !== "reach" && kind !== "touch") return null;
    const { length } = detail as { readonly length?: Length };
    return length === undefined ? null : grainsOf(length);
  },
  silent: true,
  onStrayDigits: keepStray,
  digits: "typed",
  laneWidth: 11,
};

/** Shows a lane's progress in one line. The work itself is on the stage. */
function VerticalLaneView({ live, lane }: LaneProps<"vertical">) {
  const { t } = useTranslation(["vertical", "common"]);
  const show = useShowNumber();
  const atHand = useLaneAtHand(live)?.lane === lane.lane;
  const { standingReach, trialsLeft } = lane.state;
  const best = bestOf(heightsOf(lane));
  return (
    <span className={css.lane} data-here={atHand}>
      {best !== null && (
        <strong>{`${show(formatLength(best, live.lengths))} ${t(`common:unit.${live.lengths}`)}`}</strong>
      )}
      <span>{standingReach === null ? t("live.lane.reach") : t("live.more", { count: trialsLeft })}</span>
    </span>
  );
}
