import type { Cue } from "../../electron/domain/tests/cue.ts";
import type { HeatClock } from "./clock.ts";
import type { Playing } from "./play.ts";
import { nextSpan } from "./span.ts";
import type { SoundName } from "./voices.ts";

/** The cues from `fromMs`, which is in it, until `untilMs`, which is not; pure, asked again and again. */
export type Timeline = (fromMs: number, untilMs: number) => Iterable<Cue>;

/** Where sounds go to. */
export interface SoundOutput {
  /** The audio time at which a sound is to begin to be heard at `performanceMs`; null while there is no sound. */
  toAudio(performanceMs: number): number | null;
  /** The audio time now, in seconds. */
  now(): number;
  /** How often the audio clock has jumped against the page's. */
  leaps(): number;
  play(name: SoundName, when: number): Playing;
}

/** What was done with a cue. */
export interface ScheduledCue {
  readonly cue: Cue["cue"];
  readonly atMs: number;
  /** When it should be heard, in ms of `performance.now()`. */
  readonly idealMs: number;
  /** When it begins, in seconds of the audio clock; null when it came too late to be of use and was left out. */
  readonly when: number | null;
  /** How much later than it should, in ms; 0 for a cue that was scheduled ahead. */
  readonly lateMs: number;
}

export interface SchedulerParts {
  readonly clock: HeatClock;
  readonly timeline: Timeline;
  readonly output: SoundOutput;
  /** Told of every cue once it is scheduled or left out. */
  readonly onScheduled?: (scheduled: ScheduledCue) => void;
}

export interface Scheduler {
  /** Schedules what has come into reach. Call it several times a second; when exactly changes no sound. */
  topUp(): void;
  /** Takes back what has not begun and plans it anew: after another timeline or another start. */
  replan(timeline?: Timeline): void;
  /** Ends it: what has not begun will not be heard, what has begun rings out. */
  stop(): void;
}

/** Sounds are handed to the audio thread this long before they are due: a page that hangs for two seconds is not heard. */
export const lookAheadMs = 2_500;
/** A cue due up to this long before the scheduler began is still played. */
const reachBackMs = 350;
/** A start of the heat that moved by more than this, in ms, is another start. */
const movedMs = 5;
/** A beat that comes late misleads, so it is left out; a signal that comes late still says what it has to. */
const latest: Readonly<Record<Cue["cue"], number>> = {
  // The first of it may be due at the tap that starts the heat, and is then late by the sound's own way to the ear.
  "count-in": 300,
  top: 60,
  bottom: 60,
  start: 200,
  warning: 500,
  change: 1_000,
  end: 1_000,
};

/** Makes the look-ahead scheduler of one heat in one window. */
export function createScheduler(parts: SchedulerParts): Scheduler {
  const { clock, output, onScheduled } = parts;
  let timeline = parts.timeline;
  let planned = new Map<string, Playing>();
  let coveredUntil: number | null = null;
  let zeroAt = clock.performanceAt(0);
  let leaps = output.leaps();

  function replan(next: Timeline = timeline): void {
    timeline = next;
    zeroAt = clock.performanceAt(0);
    leaps = output.leaps();
    coveredUntil = null;
    const begun = new Map<string, Playing>();
    for (const [identity, playing] of planned) {
      if (!playing.cancel()) begun.set(identity, playing);
    }
    planned = begun;
  }
  function schedule(cue: Cue): void {
    const identity = `${cue.cue} ${cue.atMs}`;
    const idealMs = clock.performanceAt(cue.atMs);
    const ideal = output.toAudio(idealMs);
    if (ideal === null || planned.has(identity)) return;
    const lateMs = Math.max(0, (output.now() - ideal) * 1000);
    const playing = lateMs > latest[cue.cue] ? null : output.play(cue.cue, ideal);
    if (playing !== null) planned.set(identity, playing);
    onScheduled?.({ cue: cue.cue, atMs: cue.atMs, idealMs, when: playing?.when ?? null, lateMs });
  }
  function topUp(): void {
    const moved = Math.abs(clock.performanceAt(0) - zeroAt) > movedMs;
    if (moved || output.leaps() !== leaps) replan();
    if (output.toAudio(0) === null) {
      // Without sound nothing counts as covered: what is due when it wakes is then played.
      coveredUntil = null;
      return;
    }
    const span = nextSpan(coveredUntil, clock.elapsed(), lookAheadMs, reachBackMs);
    if (span === null) return;
    for (const cue of timeline(span.from, span.until)) schedule(cue);
    coveredUntil = span.until;
    forgetPlayed();
  }
  function forgetPlayed(): void {
    const past = output.now() - (2 * reachBackMs) / 1000;
    for (const [identity, playing] of planned) {
      if (playing.when < past) planned.delete(identity);
    }
  }
  function stop(): void {
    replan(() => []);
  }
  return { topUp, replan, stop };
}
