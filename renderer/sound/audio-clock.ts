/**
 * The sound card's clock against the page's clock. Each has its own crystal (up to about 100 millionths apart: 6 ms a
 * minute) and sound has latency, so the two are compared again and again. This file keeps one number, the offset
 * between them; it follows slowly and evenly, so that beats planned one after the other stay even.
 */

/** One reading of both clocks. */
export interface ClockPair {
  /** A position in the sound, in seconds of the audio clock. */
  readonly audio: number;
  /** The time at which that position is heard, in ms of `performance.now()`. */
  readonly performance: number;
  /** True when the system gave both together; false when they were read one after the other. */
  readonly exact: boolean;
}

/** Converts between the two clocks. */
export interface AudioClock {
  /** Adds a reading; a few per second are enough. */
  learn(pair: ClockPair): void;
  /** Returns the audio time, in seconds, of a sound to be heard at `performanceMs`; null before the first reading. */
  toAudio(performanceMs: number): number | null;
  /** Returns when the sound at `audioSeconds` is heard, in ms of `performance.now()`; null before the first reading. */
  toPerformance(audioSeconds: number): number | null;
  /** Counts the clocks' jumps against each other: the computer slept, or the sound went to another device. */
  leaps(): number;
  /** Restarts after the audio clock has stopped for a while. */
  forget(): void;
}

/** Age in ms at which readings are dropped. */
const memoryMs = 5_000;
/** Ms after a start or a leap in which the offset is searched, not followed. */
const findingMs = 1_000;
/** During that search, a correction over this many ms counts as a leap, so that plans are made again. */
const foundWrongMs = 3;
/** Most that the offset moves per second, in ms: five times the drift of a poor crystal, too little to be heard. */
const followMsPerSecond = 0.5;
/** Three readings in a row this far off, in ms, are a leap. */
const leapMs = 25;
const looksOfLeap = 3;

interface Look {
  readonly at: number;
  readonly offset: number;
}

/** Makes an audio clock without any reading. */
export function createAudioClock(): AudioClock {
  let looks: Look[] = [];
  let exact = true;
  let offset: number | null = null;
  let foundAt = 0;
  let followedAt = 0;
  let leaps = 0;

  function learn(pair: ClockPair): void {
    const at = pair.performance;
    // The two kinds of reading have different errors and must not be mixed.
    if (pair.exact !== exact) looks = [];
    exact = pair.exact;
    looks = [...looks.filter((look) => at - look.at < memoryMs), { at, offset: at - pair.audio * 1000 }];
    if (offset === null) foundAt = at;
    else if (haveLeapt(looks, offset)) {
      looks = looks.slice(-looksOfLeap);
      foundAt = at;
    }
    const measured = offsetOf(looks, exact);
    offset =
      at - foundAt < findingMs ? find(measured) : follow(offset ?? measured, measured, at - followedAt);
    followedAt = at;
  }
  function find(measured: number): number {
    if (offset !== null && Math.abs(measured - offset) > foundWrongMs) leaps += 1;
    return measured;
  }
  return {
    learn,
    toAudio: (performanceMs) => (offset === null ? null : (performanceMs - offset) / 1000),
    toPerformance: (audioSeconds) => (offset === null ? null : audioSeconds * 1000 + offset),
    leaps: () => leaps,
    forget() {
      looks = [];
      offset = null;
      leaps += 1;
    },
  };
}

function haveLeapt(looks: readonly Look[], offset: number): boolean {
  const newest = looks.slice(-looksOfLeap);
  return newest.length === looksOfLeap && newest.every((look) => Math.abs(look.offset - offset) > leapMs);
}

/**
 * Returns the offset of readings. Exact ones err to both sides: their median. The others are only ever late: the least.
 */
function offsetOf(looks: readonly Look[], exact: boolean): number {
  const sorted = looks.map((look) => look.offset).sort((a, b) => a - b);
  const place = exact ? Math.floor((sorted.length - 1) / 2) : 0;
  return sorted[place] ?? 0;
}

/** Moves the offset in use one step towards the measured one. */
function follow(used: number, measured: number, passedMs: number): number {
  const most = (Math.max(0, passedMs) * followMsPerSecond) / 1000;
  return used + Math.min(most, Math.max(-most, measured - used));
}

/** The fields of an AudioContext in use here. */
export type ClockSource = Pick<AudioContext, "currentTime" | "getOutputTimestamp" | "outputLatency">;

/** Largest distance in ms of an output time stamp from now; beyond it is another clock's, or a stopped card's. */
const freshMs = 1_000;

/**
 * Reads both clocks. If the system gives no output time (before the first sound, and with some drivers never), it reads
 * one after the other and adds the reported latency.
 */
export function lookAt(source: ClockSource, now: () => number = () => performance.now()): ClockPair {
  const { contextTime = 0, performanceTime = 0 } = source.getOutputTimestamp();
  const fresh = Math.abs(now() - performanceTime) < freshMs;
  if (contextTime > 0 && performanceTime > 0 && fresh && contextTime <= source.currentTime) {
    return { audio: contextTime, performance: performanceTime, exact: true };
  }
  return { audio: source.currentTime - (source.outputLatency || 0), performance: now(), exact: false };
}
