import { useState } from "react";
import { useTranslation } from "react-i18next";
import { clockOf } from "../../../../../electron/domain/heats/fold.ts";
import type { TestCode } from "../../../../../electron/domain/tests/registry.ts";
import { BigKey } from "../../../../tests/live/BigKey.tsx";
import type { Live, LiveLane, LiveTool } from "../../../../tests/live/tool.ts";
import type { AttemptView } from "../../types.ts";
import { LaneActs } from "../gather/GatherLane.tsx";
import type { Gathering } from "../gather/useGather.ts";
import { LaneTile } from "./LaneTile.tsx";
import css from "./Running.module.css";

interface RunningLanesProps {
  readonly live: Live;
  readonly tool: LiveTool<TestCode>;
  readonly gathering: Gathering;
  readonly onCorrect: (attempt: AttemptView) => void;
  /** Opens the correction of one result, by its key. */
  readonly correct: (key: string) => void;
}

/** Shows all lanes of a heat in one size, whatever their results. */
export function RunningLanes({ live, tool, gathering, onCorrect, correct }: RunningLanesProps) {
  const mostBeside = tool.mostBeside ?? beside(live.lanes.length);
  const style = {
    "--lane-width": `${tool.laneWidth ?? 14}rem`,
    "--most-beside": mostBeside,
    "--rows": Math.ceil(live.lanes.length / mostBeside),
  } as React.CSSProperties;
  return (
    <ol className={css.lanes} style={style}>
      {live.lanes.map((lane) => {
        const attempt = attemptOf(lane);
        return (
          <LaneTile
            key={lane.lane}
            live={live}
            lane={lane}
            tool={tool}
            correct={correct}
            onCorrect={attempt === null ? null : () => onCorrect(attempt)}
            menu={clockOf(live.test) === "own" && <OwnMenu live={live} lane={lane} gathering={gathering} />}
          />
        );
      })}
    </ol>
  );
}

/** Returns the number of lanes side by side: up to eight fit a small screen, each as wide as possible for its name. */
function beside(count: number): number {
  if (count <= 3) return 1;
  return count <= 8 ? 2 : 3;
}

/** Returns the attempt of a lane that is to be corrected: the doubted one, or the newest that is not void. */
function attemptOf(lane: LiveLane): AttemptView | null {
  const standing = lane.in.entered.map(({ attempt }) => attempt).filter((attempt) => attempt.void === null);
  return standing.find(({ attemptId }) => attemptId === lane.in.doubted) ?? standing.at(-1) ?? null;
}

interface OwnMenuProps {
  readonly live: Live;
  readonly lane: LiveLane;
  readonly gathering: Gathering;
}

/** Shows the actions on a lane at its own pace: changes before it begins, and setting aside afterwards. */
function OwnMenu({ live, lane, gathering }: OwnMenuProps) {
  const { t } = useTranslation("live");
  const [isOpen, setOpen] = useState(false);
  const { phase } = lane.state;
  if (phase === "done" || phase === "aside") return null;
  return (
    <>
      <BigKey kind="quiet" label={t("lane.moreWho", { lane: lane.lane })} onPress={() => setOpen(!isOpen)}>
        …
      </BigKey>
      {isOpen && lane.in.free && <LaneActs taken={lane.in} count={live.heat.lanes} gathering={gathering} />}
      {isOpen && !lane.in.free && (
        <BigKey onPress={(timeStamp) => live.tap({ lane: lane.lane, kind: "aside", timeStamp })}>
          {t("lane.setAside")}
        </BigKey>
      )}
    </>
  );
}
