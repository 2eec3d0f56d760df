import { bind } from "../../../../tests/live/bind.ts";
import { keysOfLanes, type LiveKeys } from "../../../../tests/live/liveKeys.ts";
import type { HeatLane } from "../../../../tests/live/types.ts";
import type { Gathering } from "./useGather.ts";

/** Returns the keys of an open lane: another lane's key moves its athlete there. */
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

/** Returns the variant that a lane does not have now: full, or on the knees. */
export function otherVariant({ variant }: HeatLane): "full" | "knee" {
  return variant === "knee" ? "full" : "knee";
}
