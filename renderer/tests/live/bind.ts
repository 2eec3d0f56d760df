import { stepLane } from "./chosenLane.ts";
import type { LiveKeys } from "./liveKeys.ts";
import type { Live } from "./tool.ts";

/** Keys and what they do, as pairs. */
export function bind(
  ...pairs: readonly (readonly [key: string, act: (timeStamp: number) => void])[]
): LiveKeys {
  return Object.fromEntries(pairs);
}

/** To the lane before or after, where a lane is worked with at a time and there are several. */
export function keysBetweenLanes(live: Live): LiveKeys {
  if (live.lanes.length < 2) return {};
  return bind(["PageDown", () => stepLane(live, 1)], ["PageUp", () => stepLane(live, -1)]);
}
