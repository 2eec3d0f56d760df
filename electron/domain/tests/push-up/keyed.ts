import { sentence } from "../../words.ts";
import type { FieldErrors, KeyedTest } from "../fields.ts";
import type { Reading, Typed } from "../reading.ts";
import { mostOffAtEnd, type PushUpAttempt } from "./protocol.ts";

/** Enters push-ups from paper as a tally: all reps done, and how many of them were off at the end. */
export const keyedPushUp: KeyedTest<PushUpAttempt> = {
  choice: { name: "variant", options: ["full", "knee"], keys: ["F", "K"] },
  fields: () => [
    { name: "reps", digits: "whole" },
    { name: "offAtEnd", digits: "whole" },
  ],
  start: ({ variant }) => ({ variant }),
  read: (reading) => [{ how: "tally", reps: reading.count("reps"), offAtEnd: reading.count("offAtEnd") }],
  limits,
  retype: (seen, lengths) => ({ typed: retyped(seen), lengths }),
};

function limits(reading: Reading): FieldErrors {
  const isOver = Number(reading.text("offAtEnd")) > mostOffAtEnd;
  return isOver ? { offAtEnd: sentence("test.push-up.keyed.offAtEnd") } : {};
}

/** Returns cadences as the tally with the same score: up to the last one on the beat, and none off after it. */
function retyped(seen: PushUpAttempt): Typed {
  if (seen.how === "tally") return { reps: `${seen.reps}`, offAtEnd: `${seen.offAtEnd}` };
  const reps = seen.cadences.length;
  const offAtEnd = reps - (seen.cadences.lastIndexOf(".") + 1);
  return { reps: `${reps}`, offAtEnd: `${offAtEnd}` };
}
