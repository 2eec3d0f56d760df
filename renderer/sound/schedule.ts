import type { Cue } from "../../electron/domain/tests/cue.ts";
import type { HeatClock } from "./clock.ts";
import type { Playing } from "./play.ts";
import { nextSpan } from "./span.ts";
import type { SoundName } from "./voices.ts";

/** Returns the cues from `fromMs` (included) to `untilMs` (excluded); pure, called again and again. */
export type Timeline = (fromMs: number, untilMs: number) => Iterable<Cue>;

/** The destination of sounds. */
export interface SoundOutput {
  /** Returns the audio time for a sound to be heard at `performanceMs`; null while there is no sound. */
  toAudio(performanceMs: number): number | null;
  /** Returns the current audio time, in seconds. */
  now(): number;
  /** Counts the jumps of the audio clock against the page's. */
  leaps(): number;
  play(name: SoundName, when: number): Playing;
}

/** The outcome of scheduling a cue. */
export interface ScheduledCue {
  readonly cue: Cue["cue"];
  readonly atMs: number;
  /** The time when it should be heard, in ms of `performance.now()`. */
  readonly idealMs: number;
  /** Its start, in seconds of the audio clock; null when it was too late to be useful and was skipped. */
  readonly when: number | null;
  /** Its delay in ms; 0 for a cue that was scheduled ahead. */
  readonly lateMs: number;
}

export interface SchedulerParts {
  readonly clock: HeatClock;
  readonly timeline: Timeline;
  readonly output: SoundOutput;
  /** Called for every cue once it is scheduled or skipped. */
  readonly onScheduled?: (scheduled: ScheduledCue) => void;
}

export interface Scheduler {
  /** Schedules the cues that have come into reach. Call it several times a second; the exact times don't matter. */
  topUp(): void;
  /** Cancels sounds that have not begun and plans them again: after another timeline or another start. */
  replan(timeline?: Timeline): void;
  /** Ends it: sounds that have not begun are cancelled, the others play to their end. */
  stop(): void;
}

/** Ms that sounds are given to the audio thread before they are due: a page that hangs for two seconds is not heard. */
export const lookAheadMs = 2_500;
/** Longest delay in ms of a cue due before the scheduler began that is still played. */
const reachBackMs = 350;
/** Largest move of the heat's start, in ms, that is not another start. */
const movedMs = 5;
/** Longest delay of each cue. A late beat misleads, so it is skipped; a late signal still says what it must. */
const latest: Readonly<Record<Cue["cue"], number>> = {
  // The first may be due at the tap that starts the heat, and is then late by the sound's own latency.
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
      // Without sound nothing counts as covered: cues due when it wakes are then played.
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
