import { useMutation } from "@tanstack/react-query";
import { useMemo, useState } from "react";
import { useTranslation } from "react-i18next";
import { cuesBetween } from "../../../../../electron/domain/heats/cues.ts";
import { clockOf, undoable } from "../../../../../electron/domain/heats/fold.ts";
import type { LengthUnit } from "../../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../../../app/client.tsx";
import { useInitials } from "../../../../app/initials.tsx";
import type { Timeline } from "../../../../sound/schedule.ts";
import { useHeatSound } from "../../../../sound/useHeatSound.ts";
import { bind } from "../../../../tests/live/bind.ts";
import { keysOfLanes, type LiveKeys, useLiveKeys } from "../../../../tests/live/liveKeys.ts";
import type { Live, LiveTool } from "../../../../tests/live/tool.ts";
import type { HeatView, LiveHeat } from "../../../../tests/live/types.ts";
import { toolOf } from "../../../../tests/tools.ts";
import type { AttemptView } from "../../types.ts";
import type { Gathering } from "../gather/useGather.ts";
import type { HeatOutboxView } from "../sync/outgoing.ts";
import { parametersOf, useLive } from "../sync/useLive.ts";
import { isGoing } from "./asking.ts";
import { LastDone } from "./LastDone.tsx";
import { OverDialog } from "./OverDialog.tsx";
import css from "./Running.module.css";
import { RunningActs } from "./RunningActs.tsx";
import { RunningLanes } from "./RunningLanes.tsx";
import { StageDone } from "./StageDone.tsx";

interface RunningProps {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  readonly view: HeatView;
  readonly heat: LiveHeat;
  readonly outbox: HeatOutboxView;
  readonly gathering: Gathering;
  readonly onCorrect: (attempt: AttemptView) => void;
}

/** Shows a running heat: the stage that its lanes share, the lanes, and the last tap to undo. */
export function Running(props: RunningProps) {
  const { test, heat, outbox, lengths } = props;
  const live = useLive(test, heat, outbox, lengths);
  const tool = toolOf(test);
  useCommonSound(test, heat, live);
  if (live === null) return null;
  return <RunningHeat {...props} live={live} tool={tool} />;
}

/** Plays one timeline for all lanes; where each has its own pace, its tool plays the sounds. */
function useCommonSound(test: TestCode, heat: LiveHeat, live: Live | null): void {
  const parameters = useMemo(() => parametersOf(test, heat.parameters), [test, heat.parameters]);
  const timeline = useMemo<Timeline>(
    () => (from, until) => cuesBetween(test, parameters, from, until),
    [test, parameters],
  );
  const isCommon = clockOf(test) === "common";
  // Judged by the taps here, so that it is silent at the last one, and sounds again when that is undone.
  const sounds = isCommon && (live?.lanes.some(isGoing) ?? false);
  useHeatSound({ clock: sounds ? (live?.clock ?? null) : null, timeline });
}

interface RunningHeatProps extends RunningProps {
  readonly live: Live;
  readonly tool: LiveTool<TestCode>;
}

function RunningHeat({ live, tool, test, view, heat, outbox, gathering, onCorrect }: RunningHeatProps) {
  const [isEnding, setEnding] = useState(false);
  const isOwn = clockOf(test) === "own";
  const isFull = heat.lane.length >= heat.lanes;
  // At their own pace, those who have not begun don't count in `allDone`: left alone, they come with the next heat.
  const isThrough = heat.allDone && live.lanes.every(({ state }) => state.phase !== "ready");
  const finish = useFinish(heat);
  const mayCall = isThrough || (isOwn && !isFull);
  const after = !mayCall ? null : isThrough ? (view.next.length > 0 ? "next" : "finish") : "call";
  const goOn = () => (after === "finish" ? finish() : void gathering.callNext());
  // Nobody has to call the next ones to be done with this heat.
  const end = isThrough ? finish : () => setEnding(true);
  useLiveKeys(
    () => ({
      ...keysOfHeat(live, tool),
      ...(after === null ? {} : bind(["N", goOn])),
      ...bind(["X", end]),
      ...tool.keys?.(live),
    }),
    (bib) => {
      void gathering.placeBib(bib).then((came) => {
        // Whoever rests was scanned: their bib is no reading.
        if (came === "refused") tool.onStrayDigits?.(live, bib);
      });
    },
  );
  const correct = (key: string) => correctResult(live, key, onCorrect);
  return (
    <div className={css.running} data-test={test} data-pace={isOwn ? "own" : "common"} data-slim={tool.slim}>
      <HeatNotes heat={heat} outbox={outbox} view={view} />
      <div className={css.stage}>
        {isOwn || live.lanes.some(isGoing) ? (
          <tool.Stage live={live} correct={correct} last={<LastDone live={live} />} />
        ) : (
          <StageDone live={live} />
        )}
      </div>
      <RunningLanes {...{ live, tool, gathering, onCorrect, correct }} />
      <RunningActs {...{ live, outbox, after }} onAfter={goOn} onEnd={end} />
      {isEnding && <OverDialog live={live} onClose={() => setEnding(false)} />}
    </div>
  );
}

/** Opens the correction of what is stored of a result; the desk may not have heard of the newest one yet. */
function correctResult(live: Live, key: string, onCorrect: RunningProps["onCorrect"]): void {
  const stored = live.lanes.flatMap(({ in: { entered } }) => entered).find((each) => each.key === key);
  if (stored !== undefined && stored.attempt.void === null) onCorrect(stored.attempt);
}

/** Ends a finished heat, when nobody waits for another. */
function useFinish({ heatId }: LiveHeat): () => void {
  const trpc = useTRPC();
  const { ask } = useInitials();
  const end = useMutation(trpc.heat.end.mutationOptions());
  return () => {
    void ask().then((by) => {
      if (by !== null) end.mutate({ heatId, by });
    });
  };
}

/** Returns the keys of every heat: each lane's own, Shift for its second action, and undo. */
function keysOfHeat(live: Live, tool: LiveTool<TestCode>): LiveKeys {
  const { press, second } = tool;
  const laneOf = (lane: number) => live.lanes.find((each) => each.lane === lane);
  function act(does: typeof press): (lane: number, timeStamp: number) => void {
    return (lane, timeStamp) => {
      const found = laneOf(lane);
      if (found !== undefined) does?.(live, found, timeStamp);
    };
  }
  return {
    ...(press === undefined ? {} : keysOfLanes(act(press), tool.digits === "typed")),
    ...(second === undefined ? {} : keysOfLanes(act(second.press), true)),
    ...bind([
      "Backspace",
      () => {
        const last = undoable(live.heat.events as never, live.clock.elapsed());
        if (last !== null) live.takeBack(last.event.id);
      },
    ]),
  };
}

/** Notes what to know about a running heat: a less certain clock, or unsent taps. */
function HeatNotes({ heat, outbox, view }: Pick<RunningProps, "heat" | "outbox" | "view">) {
  const { t } = useTranslation("live");
  return (
    <div role="status">
      {!view.open && <p className="alert">{t("note.closed")}</p>}
      {heat.clock === "wall" && <p className="alert">{t("note.wall")}</p>}
      {outbox.state === "waiting" && <p className="alert">{t("note.waiting", { count: outbox.unsent })}</p>}
    </div>
  );
}
