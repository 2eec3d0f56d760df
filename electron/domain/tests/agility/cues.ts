import { type Cue, countIn } from "../cue.ts";
import { trialCountInMs } from "./live.ts";
import type { AgilityParameters } from "./protocol.ts";

/** Returns the cues of one trial from its own time 0: the count-in, the signal, and the final whistle. */
export function agilityCues({ seconds }: AgilityParameters): Cue[] {
  return [...countIn(trialCountInMs), { atMs: seconds * 1000, cue: "end" }];
}
