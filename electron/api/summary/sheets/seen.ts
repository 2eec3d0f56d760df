import type { TestCode } from "../../../domain/protocols/protocol.ts";
import { protocols } from "../../../domain/protocols/registry.ts";
import type { Cell } from "../../sheets/write.ts";

/** What was seen, in the columns of a sheet of results; lengths in cm, times in s. What a test does not know is left out. */
export type SeenCells = Readonly<Record<string, Cell>>;

/** Body mass is not among them: only the estimate of power needs it. */
export function seenCells(test: TestCode, seen: unknown): SeenCells {
  switch (test) {
    case "push-up":
      return pushUpCells(seen);
    case "agility":
      return protocols.agility.attempt.parse(seen);
    case "vertical": {
      const { standingReach, touchReach } = protocols.vertical.attempt.parse(seen);
      return { standing_reach: standingReach / 10, touch_reach: touchReach / 10, unit: "cm" };
    }
    case "core":
      return { time: protocols.core.attempt.parse(seen).held / 1000 };
    case "endurance": {
      const run = protocols.endurance.attempt.parse(seen);
      if (run.finished) return { finished: "yes", time: run.time / 1000 };
      return { finished: "no", rounds_done: run.roundsDone, reps_done: run.repsDone };
    }
  }
}

/** Whichever way it was judged, the mark is reps less off_at_end. */
function pushUpCells(seen: unknown): SeenCells {
  const tried = protocols["push-up"].attempt.parse(seen);
  if (tried.how === "tally") return { reps: tried.reps, off_at_end: tried.offAtEnd };
  const { cadences } = tried;
  return {
    reps: cadences.length,
    off_at_end: cadences.length - cadences.replace(/x+$/, "").length,
    cadences,
  };
}
