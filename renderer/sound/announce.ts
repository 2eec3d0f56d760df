import type { Sentence } from "../../electron/domain/words.ts";
import type { HeatClock } from "./clock.ts";
import type { Timeline } from "./schedule.ts";

/** Longest delay of words, in ms; later ones would be about the past. */
const latestMs = 1_500;

export interface Announcer {
  /** Speaks the sentences due since the last call; a voice can't be scheduled ahead like a tone. */
  tick(timeline: Timeline): void;
}

/** Speaks the sentences of a heat's cues when they are due. */
export function createAnnouncer(clock: HeatClock, say: (sentence: Sentence) => void): Announcer {
  let saidUntil = clock.elapsed();
  return {
    tick(timeline) {
      const until = clock.elapsed();
      const from = Math.max(saidUntil, until - latestMs);
      if (until <= from) return;
      saidUntil = until;
      for (const cue of timeline(from, until)) {
        if (cue.say !== undefined) say(cue.say);
      }
    },
  };
}
