/** Formats the seconds left of a trial: tenths, never below zero, and never zero before the whistle. */
export function secondsLeft(untilMs: number, elapsedMs: number): string {
  return (Math.ceil(Math.max(0, untilMs - elapsedMs) / 100) / 10).toFixed(1);
}

/** Returns the count-in's current number: 3, 2, 1. */
export function countInLeft(fromMs: number, elapsedMs: number): number {
  return Math.max(1, Math.ceil((fromMs - elapsedMs) / 1000));
}
