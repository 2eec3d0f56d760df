import { count, refuseOtherUnit } from "../cells.ts";
import type { SeenCells, SheetTest } from "../definition.ts";
import type { PushUpAttempt } from "./protocol.ts";

/** Push-ups on sheets: a tally, plus the cadences where they were judged one by one. */
export const pushUpSheet: SheetTest<PushUpAttempt> = {
  columns: [
    {
      name: "reps",
      unit: "reps",
      means: "Push-ups done in all; the mark is reps less missed_at_end",
      kind: "seen",
    },
    {
      name: "missed_at_end",
      formerly: "off_at_end",
      unit: "reps",
      means: "Of these, missed at the end",
      kind: "seen",
    },
    {
      name: "cadences",
      unit: ". and x",
      means: "Each cadence in order, on (.) or off (x), where they were judged one by one",
      kind: "written",
    },
  ],
  read: (cells) => ({
    how: "tally",
    reps: count(cells, "reps", null),
    offAtEnd: count(cells, "missed_at_end", 0),
  }),
  write,
  readPast(cells) {
    refuseOtherUnit(cells, ["reps", "rep"]);
    return { seen: { how: "tally", reps: count(cells, "mark", null), offAtEnd: 0 } };
  },
};

/** Whichever way it was judged, the mark is reps less missed_at_end. */
function write(tried: PushUpAttempt): SeenCells {
  if (tried.how === "tally") return { reps: tried.reps, missed_at_end: tried.offAtEnd };
  const { cadences } = tried;
  return {
    reps: cadences.length,
    missed_at_end: cadences.length - cadences.replace(/x+$/, "").length,
    cadences,
  };
}
