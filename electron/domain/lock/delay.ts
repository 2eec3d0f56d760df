import { sameBoot } from "../heats/clock.ts";

/** Wrong tries in a row, and the time of the last one by the monotonic clock. */
export interface Tries {
  readonly wrong: number;
  /** Null before the first wrong try. */
  readonly since: Tick | null;
}

/** A moment on the monotonic clock: ms since the computer booted, and which boot that was. Wall time is never used. */
export interface Tick {
  readonly ms: number;
  readonly boot: string;
}

export const noTries: Tries = { wrong: 0, since: null };

/** Wrong tries in a row that cost no delay. */
export const freeTries = 2;
const firstDelayMs = 5_000;
/** Longest delay, in ms. It leaves a hundred or so tries a day; longer, an organiser might wait behind a prankster. */
export const longestDelayMs = 300_000;

/** Returns the delay after `wrong` wrong tries in a row, in ms; it doubles from the third on. Ours, no source. */
export function delayAfter(wrong: number): number {
  if (wrong <= freeTries) return 0;
  return Math.min(longestDelayMs, firstDelayMs * 2 ** (wrong - freeTries - 1));
}

/**
 * Returns how long nobody may try, in ms. After a reboot the whole delay counts from there, since only wall time knows
 * how much passed in between, and anybody can set that.
 */
export function waitLeft(tries: Tries, now: Tick): number {
  const { since, wrong } = settled(tries, now);
  return since === null ? 0 : Math.max(0, delayAfter(wrong) - (now.ms - since.ms));
}

/** Returns the same tries by the clock of this boot. */
export function settled(tries: Tries, now: Tick): Tries {
  const { since, wrong } = tries;
  if (wrong === 0) return noTries;
  const isOurs = since !== null && sameBoot(since.boot, now.boot) && since.ms <= now.ms;
  return isOurs ? tries : { wrong, since: now };
}

/** Adds one wrong try. */
export function tryMore(tries: Tries, now: Tick): Tries {
  return { wrong: tries.wrong + 1, since: now };
}
