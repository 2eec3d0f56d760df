import { bind } from "../../../../tests/live/bind.ts";
import { keysOfLanes, type LiveKeys } from "../../../../tests/live/liveKeys.ts";
import type { HeatLane } from "../../../../tests/live/types.ts";
import type { Gathering } from "./useGather.ts";

/** The keys of a lane that is open to be changed: a lane's key moves whoever is in it there. */
export function keysOfLane(taken: HeatLane, gathering: Gathering, close: () => void): LiveKeys {
  const { athleteId } = taken.who;
  function then(act: () => void): () => void {
    return () => {
      act();
      close();
    };
  }
  return {
    ...keysOfLanes((to) => then(() => gathering.move(athleteId, to))()),
    ...bind(
      ["B", then(() => gathering.sendBack(athleteId))],
      ["A", then(() => gathering.absent(athleteId))],
      ["Escape", close],
    ),
    ...(taken.variant === "" ? {} : bind(["K", () => gathering.setVariant(athleteId, otherVariant(taken))])),
  };
}

/** Full or on the knees: the other one of what a lane has now. */
export function otherVariant({ variant }: HeatLane): "full" | "knee" {
  return variant === "knee" ? "full" : "knee";
}
