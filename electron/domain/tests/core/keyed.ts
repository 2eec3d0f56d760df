import type { KeyedTest } from "../fields.ts";
import { timeText } from "../time-text.ts";
import type { CoreAttempt } from "./protocol.ts";

/** Enters the staged plank from paper: the time held. */
export const keyedCore: KeyedTest<CoreAttempt> = {
  choice: null,
  fields: () => [{ name: "time", digits: "time" }],
  start: () => ({}),
  read: (reading) => [{ held: reading.time("time") }],
  retype: ({ held }, lengths) => ({ typed: { time: timeText(held) }, lengths }),
};
