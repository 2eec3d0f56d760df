import { cuesBetween } from "../../../electron/domain/heats/cues.ts";
import type { AgilityLane } from "../../../electron/domain/tests/agility/live.ts";
import type { AgilityParameters } from "../../../electron/domain/tests/agility/protocol.ts";
import type { Cue } from "../../../electron/domain/tests/cue.ts";
import type { Timeline } from "../../sound/schedule.ts";

/** Returns the cues of the current trials, by the heat's time: each has its own count-in, signal and whistle. */
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

/** Returns the starts of the current trials; lanes that start together give one. */
export function startsOf(lanes: readonly AgilityLane[]): number[] {
  return [...new Set(lanes.flatMap(({ trial }) => trial?.fromMs ?? []))].sort((a, b) => a - b);
}

/** Formats the seconds left of a trial: tenths, never below zero, and never zero before the whistle. */
export function secondsLeft(untilMs: number, elapsedMs: number): string {
  return (Math.ceil(Math.max(0, untilMs - elapsedMs) / 100) / 10).toFixed(1);
}

/** Returns the count-in's current number: 3, 2, 1. */
export function countInLeft(fromMs: number, elapsedMs: number): number {
  return Math.max(1, Math.ceil((fromMs - elapsedMs) / 1000));
}
