import type { KeyedTest } from "../fields.ts";
import type { Reading, Typed } from "../reading.ts";
import { timeText } from "../time-text.ts";
import type { EnduranceAttempt } from "./protocol.ts";

/** Enters the circuit from paper: its time, or the rounds done by an athlete who did not finish. */
export const keyedEndurance: KeyedTest<EnduranceAttempt> = {
  choice: { name: "finished", options: ["yes", "no"], keys: ["F", "N"] },
  fields: ({ finished }) =>
    finished === "no"
      ? [
          { name: "roundsDone", digits: "whole" },
          { name: "repsDone", digits: "whole" },
        ]
      : [{ name: "time", digits: "time" }],
  start: () => ({ finished: "yes" }),
  read: (reading) => [read(reading)],
  retype: (seen, lengths) => ({ typed: retyped(seen), lengths }),
};

function read(reading: Reading): EnduranceAttempt {
  if (reading.text("finished") !== "no") return { finished: true, time: reading.time("time") };
  return { finished: false, roundsDone: reading.count("roundsDone"), repsDone: reading.count("repsDone") };
}

function retyped(seen: EnduranceAttempt): Typed {
  if (seen.finished) return { finished: "yes", time: timeText(seen.time) };
  return { finished: "no", roundsDone: `${seen.roundsDone}`, repsDone: `${seen.repsDone}` };
}
