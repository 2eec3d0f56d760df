import { sentence } from "../../words.ts";
import type { FieldErrors, KeyedTest } from "../fields.ts";
import type { Reading, Typed } from "../reading.ts";
import { type PushUpAttempt, pushUp } from "./protocol.ts";

/** Enters push-ups from paper as a tally: all cadences gone by, and how many of them were off at the end. */
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

/** The misses in a row that end the test are the day's to set, and no more of them can be at the end. */
function limits(reading: Reading, parameters: unknown): FieldErrors {
  const { missesToStop } = pushUp.parameters.parse(parameters);
  const isOver = Number(reading.text("offAtEnd")) > missesToStop;
  return isOver ? { offAtEnd: sentence("test.push-up.keyed.offAtEnd", { count: missesToStop }) } : {};
}

/** Returns cadences as the tally with the same score: up to the last one on the beat, and none off after it. */
function retyped(seen: PushUpAttempt): Typed {
  if (seen.how === "tally") return { reps: `${seen.reps}`, offAtEnd: `${seen.offAtEnd}` };
  const reps = seen.cadences.length;
  const offAtEnd = reps - (seen.cadences.lastIndexOf(".") + 1);
  return { reps: `${reps}`, offAtEnd: `${offAtEnd}` };
}
