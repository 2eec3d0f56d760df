import { stepLane } from "./chosenLane.ts";
import type { LiveKeys } from "./liveKeys.ts";
import type { Live } from "./tool.ts";

/** Makes keys and their actions from pairs. */
export function bind(
  ...pairs: readonly (readonly [key: string, act: (timeStamp: number) => void])[]
): LiveKeys {
  return Object.fromEntries(pairs);
}

/** Returns keys for the previous and next lane, where one lane at a time is in use and there are several. */
export function keysBetweenLanes(live: Live): LiveKeys {
  if (live.lanes.length < 2) return {};
  return bind(["PageDown", () => stepLane(live, 1)], ["PageUp", () => stepLane(live, -1)]);
}
