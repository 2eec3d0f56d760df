/**
 * The sound card's clock against the page's clock. Each runs on its own crystal (up to about 100 millionths apart: 6 ms a
 * minute) and sound takes a while to be heard, so the two are compared again and again. What this keeps is one number,
 * the offset between them; it follows slowly and evenly, so that beats planned one after the other stay even.
 */

/** One look at both clocks. */
export interface ClockPair {
  /** A place in the sound, in seconds of the audio clock. */
  readonly audio: number;
  /** When that place is heard, in ms of `performance.now()`. */
  readonly performance: number;
  /** True when the system told the two together; false when they were read one after the other. */
  readonly exact: boolean;
}

/** Translates between the two clocks. */
export interface AudioClock {
  /** Takes a look into account; at most a few a second are needed. */
  learn(pair: ClockPair): void;
  /** The audio time, in seconds, of what is to be heard at `performanceMs`; null before the first look. */
  toAudio(performanceMs: number): number | null;
  /** When the sound at `audioSeconds` is heard, in ms of `performance.now()`; null before the first look. */
  toPerformance(audioSeconds: number): number | null;
  /** How often the clocks jumped against each other: the machine slept, or the sound went to another device. */
  leaps(): number;
  /** Starts anew: the audio clock stood still for a while. */
  forget(): void;
}

/** Looks older than this are forgotten. */
const memoryMs = 5_000;
/** During the first second after a start or a leap the offset is still found, not followed. */
const findingMs = 1_000;
/** While it is being found, a correction larger than this counts as a leap, so that what is planned is planned anew. */
const foundWrongMs = 3;
/** The offset moves by at most this much a second: five times the drift of a poor crystal, too little to be heard. */
const followMsPerSecond = 0.5;
/** Three looks in a row this far off are a leap. */
const leapMs = 25;
const looksOfLeap = 3;

interface Look {
  readonly at: number;
  readonly offset: number;
}

/** Makes an audio clock that has seen nothing yet. */
export function createAudioClock(): AudioClock {
  let looks: Look[] = [];
  let exact = true;
  let offset: number | null = null;
  let foundAt = 0;
  let followedAt = 0;
  let leaps = 0;

  function learn(pair: ClockPair): void {
    const at = pair.performance;
    // The two kinds of look have different errors and are not to be mixed.
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

/** Looks told together err to both sides: their median. Looks read one after the other are only ever late: the least. */
function offsetOf(looks: readonly Look[], exact: boolean): number {
  const sorted = looks.map((look) => look.offset).sort((a, b) => a - b);
  const place = exact ? Math.floor((sorted.length - 1) / 2) : 0;
  return sorted[place] ?? 0;
}

/** One step from the offset in use towards the measured one. */
function follow(used: number, measured: number, passedMs: number): number {
  const most = (Math.max(0, passedMs) * followMsPerSecond) / 1000;
  return used + Math.min(most, Math.max(-most, measured - used));
}

/** What is read of an AudioContext. */
export type ClockSource = Pick<AudioContext, "currentTime" | "getOutputTimestamp" | "outputLatency">;

/** An output time stamp further from now than this, in ms, is of another clock or of a card that stands still. */
const freshMs = 1_000;

/**
 * Looks at both clocks. Where the system doesn't tell what is heard when (before the first sound has left, and with
 * some drivers for good), it reads the one and then the other and adds the latency that is reported.
 */
export function lookAt(source: ClockSource, now: () => number = () => performance.now()): ClockPair {
  const { contextTime = 0, performanceTime = 0 } = source.getOutputTimestamp();
  const fresh = Math.abs(now() - performanceTime) < freshMs;
  if (contextTime > 0 && performanceTime > 0 && fresh && contextTime <= source.currentTime) {
    return { audio: contextTime, performance: performanceTime, exact: true };
  }
  return { audio: source.currentTime - (source.outputLatency || 0), performance: now(), exact: false };
}
