import { useCallback, useMemo } from "react";
import { useHeatSound } from "../../sound/useHeatSound.ts";
import { useLaneAtHand } from "../live/chosenLane.ts";
import type { LaneProps, Live, StageProps } from "../live/tool.ts";
import { CountTrial } from "./CountTrial.tsx";
import { Cross } from "./Cross.tsx";
import { BothIn, ReadyTrial } from "./ReadyTrial.tsx";
import { RerunDialog } from "./RerunDialog.tsx";
import { RunningTrial } from "./RunningTrial.tsx";
import css from "./Stage.module.css";
import { Trials } from "./Trials.tsx";
import { startsOf, trialCues } from "./timeline.ts";

/** Shows the trial of the current lane: the direction, the clock, the count, and the trials done. */
export function AgilityStage({ live, last }: StageProps<"agility">) {
  const lane = useLaneAtHand(live);
  useTrialSound(live);
  if (lane === null) return null;
  const { trial, next } = lane.state;
  const direction = trial?.direction ?? next ?? "ccw";
  const at = trial !== null && trial.landings > 0 ? { at: (trial.landings - 1) % 4 } : {};
  return (
    <div className={css.stage} data-test="agility">
      <div className={css.side}>
        <Cross direction={direction} {...at} />
        <Trials live={live} lane={lane} />
      </div>
      <div className={css.work}>
        {lane.state.trial === null && lane.state.next !== null && last}
        <p className={css.who}>
          <strong className={css.bib}>{lane.in.who.bib}</strong> {lane.in.who.name}
        </p>
        <AtHand live={live} lane={lane} />
      </div>
      <RerunDialog live={live} />
    </div>
  );
}

function AtHand({ live, lane }: LaneProps<"agility">) {
  const { trial, next, phase } = lane.state;
  if (phase === "aside" || (trial === null && next === null)) return <BothIn lane={lane} />;
  if (trial === null) return <ReadyTrial live={live} lane={lane} />;
  if (trial.stage === "to-count") return <CountTrial live={live} lane={lane} trial={trial} />;
  return <RunningTrial live={live} lane={lane} trial={trial} />;
}

/** Plays each trial's own sounds: count-in, signal, whistle. */
function useTrialSound({ lanes, clock, parameters }: Live<"agility">): void {
  const starts = startsOf(lanes.map(({ state }) => state)).join(" ");
  const cues = useMemo(
    () => trialCues(starts === "" ? [] : starts.split(" ").map(Number), parameters),
    [starts, parameters],
  );
  const timeline = useCallback<typeof cues>((from, until) => cues(from, until), [cues]);
  useHeatSound({ clock, timeline });
}
