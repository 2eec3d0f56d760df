import { cadenceAt } from "../../../electron/domain/tests/push-up/live.ts";
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

/** Stops a lane whose athlete stopped. Before the start there is nothing to stop. */
export function stop(live: PushUpLive, { lane, state }: Lane, timeStamp: number): void {
  if (state.phase !== "going" || live.clock.elapsedAt(timeStamp) < 0) return;
  live.tap({ lane, kind: "stop", timeStamp });
}
