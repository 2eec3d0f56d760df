import type { Sentence } from "../../electron/domain/words.ts";
import type { HeatClock } from "./clock.ts";
import type { Timeline } from "./schedule.ts";

/** Words that come later than this, in ms, would be about something that has gone by. */
const latestMs = 1_500;

export interface Announcer {
  /** Says what has become due since the last call; a voice can't be scheduled ahead as a tone can. */
  tick(timeline: Timeline): void;
}

/** Says the sentences that the cues of a heat bring, when they are due. */
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
