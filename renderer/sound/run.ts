import type { Sentence } from "../../electron/domain/words.ts";
import { createAnnouncer } from "./announce.ts";
import type { HeatClock } from "./clock.ts";
import type { SoundEngine } from "./engine.ts";
import { createScheduler, type ScheduledCue, type Timeline } from "./schedule.ts";

export interface HeatSoundParts {
  readonly engine: SoundEngine;
  readonly clock: HeatClock;
  readonly timeline: Timeline;
  /** Says a sentence that a cue brings. */
  readonly say: (sentence: Sentence) => void;
  /** Told of every cue once it is scheduled or left out. */
  readonly onScheduled: (scheduled: ScheduledCue) => void;
}

/** A heat that sounds. */
export interface HeatSound {
  /** Goes on with other cues: what has not begun of the old ones is taken back. */
  follow(timeline: Timeline): void;
  /** Ends it: what has not begun will not be heard, what has begun rings out. */
  stop(): void;
}

/** Sounds a heat until it is stopped. */
export function runHeatSound({ engine, clock, timeline, say, onScheduled }: HeatSoundParts): HeatSound {
  let followed = timeline;
  const scheduler = createScheduler({ clock, timeline, output: engine.output, onScheduled });
  const announcer = createAnnouncer(clock, say);
  const stopTime = engine.keepTime(() => {
    scheduler.topUp();
    announcer.tick(followed);
  });
  return {
    follow(next) {
      followed = next;
      scheduler.replan(next);
      scheduler.topUp();
    },
    stop() {
      stopTime();
      scheduler.stop();
    },
  };
}
