import { cuesBetween } from "../../../electron/domain/heats/cues.ts";
import type { AgilityLane } from "../../../electron/domain/tests/agility/live.ts";
import type { AgilityParameters } from "../../../electron/domain/tests/agility/protocol.ts";
import type { Cue } from "../../../electron/domain/tests/cue.ts";
import type { Timeline } from "../../sound/schedule.ts";

/** What is heard of the trials at hand, by the heat's time: each has its own count-in, signal and whistle. */
export function trialCues(starts: readonly number[], parameters: AgilityParameters): Timeline {
  return (fromMs, untilMs) =>
    starts
      .flatMap((start) => cuesAt(start, parameters, fromMs, untilMs))
      .sort((first, second) => first.atMs - second.atMs);
}

function cuesAt(start: number, parameters: AgilityParameters, fromMs: number, untilMs: number): Cue[] {
  return cuesBetween("agility", parameters, fromMs - start, untilMs - start).map((cue) => ({
    ...cue,
    atMs: cue.atMs + start,
  }));
}

/** When the trials at hand start; lanes that start together are heard once. */
export function startsOf(lanes: readonly AgilityLane[]): number[] {
  return [...new Set(lanes.flatMap(({ trial }) => trial?.fromMs ?? []))].sort((a, b) => a - b);
}
