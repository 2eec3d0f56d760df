import { createCell } from "../../app/cell.ts";
import { bind } from "../live/bind.ts";
import type { LiveKeys } from "../live/liveKeys.ts";
import type { Live, LiveLane } from "../live/tool.ts";
import { exerciseAt, repsBefore, withinRound } from "./howFar.ts";

type EnduranceLive = Live<"endurance">;
type Lane = LiveLane<"endurance">;

/** An athlete who stopped; how far they came is asked while the others go on. */
export interface Stopped {
  readonly heatId: string;
  readonly lane: number;
  readonly reps: number;
}

const stopped = createCell<Stopped | null>(null);

export function useStopped(live: EnduranceLive): { readonly stopped: Stopped; readonly lane: Lane } | null {
  stopped.use();
  return stoppedAt(live);
}

/** Returns the lane in question; null once that lane is done in another way. */
function stoppedAt(live: EnduranceLive): { readonly stopped: Stopped; readonly lane: Lane } | null {
  const asked = stopped.get();
  if (asked === null || asked.heatId !== live.heat.heatId) return null;
  const lane = live.lanes.find((each) => each.lane === asked.lane);
  return lane === undefined || lane.state.phase !== "going" ? null : { stopped: asked, lane };
}

export function round(live: EnduranceLive, { lane }: Lane, timeStamp: number): void {
  live.tap({ lane, kind: "round", timeStamp });
}

export function askHowFar(live: EnduranceLive, { lane, state }: Lane): void {
  if (state.phase !== "going" || live.elapsedMs < 0) return;
  stopped.set({ heatId: live.heat.heatId, lane, reps: 0 });
}

export function setReps(live: EnduranceLive, by: (reps: number) => number): void {
  const asked = stopped.get();
  if (asked !== null) stopped.set({ ...asked, reps: withinRound(live.parameters, by(asked.reps)) });
}

/** Moves to the start of the previous or next exercise. */
function stepExercise(live: EnduranceLive, by: 1 | -1): void {
  const starts = repsBefore(live.parameters);
  setReps(live, (reps) => starts[exerciseAt(live.parameters, reps) + by] ?? reps);
}

export function keepHowFar(live: EnduranceLive, timeStamp: number): void {
  const asked = stoppedAt(live);
  if (asked === null) return;
  const { lane, state } = asked.lane;
  const detail = { repsDone: asked.stopped.reps, roundsDone: state.splits.length };
  live.tap({ lane, kind: "not-finished", detail, timeStamp });
  stopped.set(null);
}

export function stillGoing(): void {
  stopped.set(null);
}

/** Returns the keys of the question; the lanes' keys work beside it. */
export function keys(live: EnduranceLive): LiveKeys {
  if (stoppedAt(live) === null) return {};
  return bind(
    ["ArrowRight", () => stepExercise(live, 1)],
    ["ArrowLeft", () => stepExercise(live, -1)],
    ["ArrowUp", () => setReps(live, (reps) => reps + 1)],
    ["ArrowDown", () => setReps(live, (reps) => reps - 1)],
    ["Enter", (timeStamp) => keepHowFar(live, timeStamp)],
    ["Escape", stillGoing],
  );
}
