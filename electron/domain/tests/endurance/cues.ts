import { type Cue, countIn } from "../cue.ts";
import { liveEndurance } from "./live.ts";
import type { EnduranceParameters } from "./protocol.ts";

/** The count-in and the start of everybody; from then on the clock runs and hurries nobody. */
export function enduranceCues(parameters: EnduranceParameters): Cue[] {
  return countIn(liveEndurance.countInMs(parameters));
}
