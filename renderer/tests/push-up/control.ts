import { cadenceAt } from "../../../electron/domain/tests/push-up/live.ts";
import { bind } from "../live/bind.ts";
import type { LiveKeys } from "../live/liveKeys.ts";
import type { Live, LiveLane } from "../live/tool.ts";

type PushUpLive = Live<"push-up">;
type Lane = LiveLane<"push-up">;

/** Marks the cadence of that moment as off; tapped again before its time is over, it is on after all. */
export function mark(live: PushUpLive, { lane, state }: Lane, timeStamp: number): void {
  const atMs = live.clock.elapsedAt(timeStamp);
  const cadence = cadenceAt(live.parameters, atMs);
  if (cadence < 1 || state.phase !== "going" || bounces(live, lane, atMs)) return;
  const kind = state.cadences[cadence - 1] === "x" ? "on-again" : "off";
  live.tap({ lane, kind, detail: { cadence }, timeStamp });
}

/** Two taps closer than this, in ms, are one trembling finger, not a change of mind. */
const bounceMs = 80;

function bounces(live: PushUpLive, lane: number, atMs: number): boolean {
  const last = live.heat.events.findLast((event) => event.lane === lane);
  return last !== undefined && Math.abs(atMs - last.atMs) < bounceMs;
}

/** Returns whether a finished lane still asks for the rep on whose beat its stop came. */
function asks({ state }: Lane): boolean {
  return state.phase === "done" && state.doubt !== null;
}

/** Says whether the rep on whose beat the stop came was done. */
export function settle(live: PushUpLive, { lane, state }: Lane, done: boolean, timeStamp: number): void {
  if (state.doubt === null) return;
  live.tap({ lane, kind: "last", detail: { cadence: state.doubt.with, done }, timeStamp });
}

/** Returns the lane that stopped last of those that ask: one key answers it. */
export function askedLane(live: PushUpLive): Lane | null {
  const stops = live.heat.events
    .filter(({ kind }) => kind === "stop")
    .toReversed()
    .toSorted((a, b) => b.atMs - a.atMs);
  const lanes = stops.map(({ lane }) => live.lanes.find((each) => each.lane === lane));
  return lanes.find((lane) => lane !== undefined && asks(lane)) ?? null;
}

/** Returns the key that counts the last rep of the lane that stopped last; without it, and a reply, it does not count. */
export function keys(live: PushUpLive): LiveKeys {
  const lane = askedLane(live);
  return lane === null ? {} : bind(["M", (timeStamp) => settle(live, lane, true, timeStamp)]);
}

/**
 * Stops a lane whose athlete stopped. Before the start there is nothing to stop. Pressed again, it answers what the stop
 * asked: the rep on whose beat it came does not count.
 */
export function stop(live: PushUpLive, pressed: Lane, timeStamp: number): void {
  const { lane, state } = pressed;
  if (asks(pressed) && !bounces(live, lane, live.clock.elapsedAt(timeStamp))) {
    settle(live, pressed, false, timeStamp);
    return;
  }
  if (state.phase !== "going" || live.clock.elapsedAt(timeStamp) < 0) return;
  live.tap({ lane, kind: "stop", timeStamp });
}
