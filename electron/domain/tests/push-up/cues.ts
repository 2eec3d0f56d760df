import type { Cue } from "../cue.ts";
import { livePushUp, msPerBeat } from "./live.ts";
import type { PushUpParameters } from "./protocol.ts";

/** Returns the beats of the metronome: the count-in, the start, and then the guiding and judging beats. */
export function pushUpCues(parameters: PushUpParameters, fromMs: number, untilMs: number): Cue[] {
  const beat = msPerBeat(parameters);
  const first = Math.max(-livePushUp.countInMs(parameters) / beat, Math.floor(fromMs / beat));
  const count = Math.max(0, Math.ceil(untilMs / beat) - first + 1);
  return Array.from({ length: count }, (_, index) => beatCue(first + index, beat, parameters.beatsPerRep));
}

/** Returns one beat by its ordinal, computed from time 0 so that no rounding adds up. */
function beatCue(ordinal: number, beat: number, beatsPerRep: number): Cue {
  const atMs = ordinal * beat;
  if (ordinal < 0) return { atMs, cue: "count-in", count: -ordinal };
  if (ordinal === 0) return { atMs, cue: "start" };
  if (ordinal % beatsPerRep === 0) return { atMs, cue: "top", count: ordinal / beatsPerRep };
  return { atMs, cue: "bottom" };
}
