import { hashOf } from "./joining.ts";

/** How long devices may take to hear that the day is over, in ms: several of their signs of life, also where they are slow. */
const longestMs = 30_000;
/** How long the table stays for the page to which the last of them goes, in ms. */
const lastPageMs = 5_000;

/** The time in which devices hear that the day is over. */
export interface Goodbye {
  /** Notes that the holder of a token has heard it. */
  heard(token: string): void;
  /** Stops waiting, and calls nothing any more. */
  stop(): void;
}

/**
 * Waits until every device that was there has said that it heard; then it calls `end`, and after half a minute in any case.
 * @param toHear the hashes of their tokens
 */
export function beginGoodbye(toHear: readonly string[], end: () => void): Goodbye {
  const left = new Set(toHear);
  const timers = [setTimeout(end, longestMs)];
  return {
    heard(token) {
      if (left.delete(hashOf(token)) && left.size === 0) timers.push(setTimeout(end, lastPageMs));
    },
    stop() {
      for (const timer of timers) clearTimeout(timer);
    },
  };
}
