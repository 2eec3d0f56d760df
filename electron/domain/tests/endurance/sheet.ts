import { sentence } from "../../words.ts";
import { type Cells, count, pastTime, RowRefused, time, yesNo } from "../cells.ts";
import type { SeenCells, SheetTest } from "../definition.ts";
import type { EnduranceAttempt } from "./protocol.ts";

/** The circuit on sheets: its time, or the rounds done. */
export const enduranceSheet: SheetTest<EnduranceAttempt> = {
  columns: [
    { name: "time", unit: "s", means: "circuit: time to finish, as it was taken", kind: "seen" },
    { name: "finished", unit: "yes or no", means: "Circuit: whether all rounds were done", kind: "seen" },
    { name: "rounds_done", unit: "rounds", means: "Circuit not finished: whole rounds", kind: "seen" },
    { name: "reps_done", unit: "reps", means: "Circuit not finished: reps after them", kind: "written" },
  ],
  read,
  write,
  readPast: (cells) => ({ seen: { finished: true, time: pastTime(cells) } }),
};

/** Reads an attempt: a time means finished; otherwise the rounds done (reps of the last round are not on paper). */
function read(cells: Cells): EnduranceAttempt {
  const said = yesNo(cells, "finished");
  if (said === false) {
    return { finished: false, roundsDone: count(cells, "rounds_done", null), repsDone: 0 };
  }
  if (said === null && cells("time") === "")
    throw new RowRefused("time", sentence("test.endurance.row.timeOrRounds"));
  return { finished: true, time: time(cells, "time") };
}

function write(run: EnduranceAttempt): SeenCells {
  if (run.finished) return { finished: "yes", time: run.time / 1000 };
  return { finished: "no", rounds_done: run.roundsDone, reps_done: run.repsDone };
}
