import { sentence } from "../../words.ts";
import { type Cells, count, RowRefused, refuseOtherUnit } from "../cells.ts";
import type { SeenCells, SheetTest } from "../definition.ts";
import type { PushUpAttempt } from "./protocol.ts";

/** Push-ups on sheets: a tally, plus the cadences where they were judged one by one. */
export const pushUpSheet: SheetTest<PushUpAttempt> = {
  columns: [
    {
      name: "reps",
      unit: "top beats",
      means: "Top beats gone by in all, missed and skipped ones too; the mark is reps less missed_at_end",
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
    offAtEnd: missedIn(cells),
  }),
  /** Whoever left it blank may have written down all the beats, or only the reps that counted. */
  asked: [{ name: "missed_at_end", options: ["0", "1", "2", "3"] }],
  write,
  readPast(cells) {
    refuseOtherUnit(cells, ["reps", "rep"]);
    return { seen: { how: "tally", reps: count(cells, "mark", null), offAtEnd: 0 } };
  },
};

function missedIn(cells: Cells): number {
  if (cells("missed_at_end") === "")
    throw new RowRefused("missed_at_end", sentence("test.push-up.row.missedBlank"));
  return count(cells, "missed_at_end", null);
}

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
