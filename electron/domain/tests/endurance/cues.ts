import { type Cue, countIn } from "../cue.ts";
import { liveEndurance } from "./live.ts";
import type { EnduranceParameters } from "./protocol.ts";

/** Returns the count-in and the mass start; after it the clock runs without cues. */
export function enduranceCues(parameters: EnduranceParameters): Cue[] {
  return countIn(liveEndurance.countInMs(parameters));
}
