import { sameBoot } from "../heats/clock.ts";

/** Wrong tries in a row, and when the last of them was by the machine's monotonic clock. */
export interface Tries {
  readonly wrong: number;
  /** Null while there was none. */
  readonly since: Tick | null;
}

/** A moment on the monotonic clock: ms since the machine started, and which start that was. Wall time is not asked. */
export interface Tick {
  readonly ms: number;
  readonly boot: string;
}

export const noTries: Tries = { wrong: 0, since: null };

/** So many slips cost nothing. */
export const freeTries = 2;
const firstDelayMs = 5_000;
/** So long that a day's tries are a hundred or so, and no longer: an organiser may be waiting behind a prankster. */
export const longestDelayMs = 300_000;

/** How long to wait after so many wrong tries in a row, in ms: it doubles from the third on. Our own, no source. */
export function delayAfter(wrong: number): number {
  if (wrong <= freeTries) return 0;
  return Math.min(longestDelayMs, firstDelayMs * 2 ** (wrong - freeTries - 1));
}

/**
 * How long nobody may try now, in ms. After a new start of the machine the whole delay counts from there, since what
 * passed in between is known from wall time alone, which anybody can set.
 */
export function waitLeft(tries: Tries, now: Tick): number {
  const { since, wrong } = settled(tries, now);
  return since === null ? 0 : Math.max(0, delayAfter(wrong) - (now.ms - since.ms));
}

/** The same tries, told by the clock of this start of the machine. */
export function settled(tries: Tries, now: Tick): Tries {
  const { since, wrong } = tries;
  if (wrong === 0) return noTries;
  const isOurs = since !== null && sameBoot(since.boot, now.boot) && since.ms <= now.ms;
  return isOurs ? tries : { wrong, since: now };
}

/** One wrong try more. */
export function tryMore(tries: Tries, now: Tick): Tries {
  return { wrong: tries.wrong + 1, since: now };
}
