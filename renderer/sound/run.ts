import type { Sentence } from "../../electron/domain/words.ts";
import { createAnnouncer } from "./announce.ts";
import type { HeatClock } from "./clock.ts";
import type { SoundEngine } from "./engine.ts";
import { createScheduler, type ScheduledCue, type Timeline } from "./schedule.ts";

export interface HeatSoundParts {
  readonly engine: SoundEngine;
  readonly clock: HeatClock;
  readonly timeline: Timeline;
  /** Speaks a cue's sentence. */
  readonly say: (sentence: Sentence) => void;
  /** Called for every cue once it is scheduled or skipped. */
  readonly onScheduled: (scheduled: ScheduledCue) => void;
}

/** A sounding heat. */
export interface HeatSound {
  /** Continues with other cues: old ones that have not begun are cancelled. */
  follow(timeline: Timeline): void;
  /** Ends it: sounds that have not begun are cancelled, the others play to their end. */
  stop(): void;
}

/** Plays a heat's sounds until it is stopped. */
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
