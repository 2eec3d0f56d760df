/** One look at another clock. */
export interface Exchange {
  /** When it was asked and when the answer came, in ms of the own monotonic clock. */
  readonly askedAt: number;
  readonly answeredAt: number;
  /** What the other clock showed when the answer was made, in ms. */
  readonly shownMs: number;
}

/** How far another clock is ahead of the own one, and how far that may be off, both in ms. */
export interface ClockOffset {
  readonly aheadMs: number;
  readonly doubtMs: number;
}

/** A clock that may be off by more than this says so, in ms. */
const saidAboveMs = 50;

/**
 * Estimates how far another monotonic clock is ahead: its answer is taken to have been made halfway, which is off by at most
 * half the round trip, whichever way took longer. Of several exchanges the one with the smallest doubt counts.
 * Source: F. Cristian, "Probabilistic clock synchronization", Distributed Computing 3 (1989), 146–158.
 */
export function offsetOf({ askedAt, answeredAt, shownMs }: Exchange): ClockOffset {
  const doubtMs = Math.max(0, answeredAt - askedAt) / 2;
  return { aheadMs: shownMs - (answeredAt - doubtMs), doubtMs };
}

/** Returns how far a clock may be off as it is told, in seconds, rounded up to tenths; null where it is too little to say. */
export function toldDoubt(doubtMs: number): number | null {
  return doubtMs > saidAboveMs && Number.isFinite(doubtMs) ? Math.ceil(doubtMs / 100) / 10 : null;
}
