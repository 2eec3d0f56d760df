import { type Cue, countIn } from "../cue.ts";
import { trialCountInMs } from "./live.ts";
import type { AgilityParameters } from "./protocol.ts";

/** One trial from its own time 0: the count-in, the signal, and the whistle at the end. */
export function agilityCues({ seconds }: AgilityParameters): Cue[] {
  return [...countIn(trialCountInMs), { atMs: seconds * 1000, cue: "end" }];
}
