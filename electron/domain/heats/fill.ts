import type { QueuePlace } from "../queue/queue.ts";

/** The athletes to call into free lanes. */
export interface Filling {
  readonly called: readonly QueuePlace[];
  /** The next athlete to be rested, when lanes stay free because those who are next still rest. */
  readonly resting: QueuePlace | null;
}

/**
 * Picks athletes from a queue in turn: first those called by hand, rested or not, since somebody decided so; then those
 * who are rested. Athletes in a lane already are skipped.
 * @param now ISO 8601
 */
export function fillFrom(
  queue: readonly QueuePlace[],
  inLanes: ReadonlySet<number>,
  free: number,
  now: string,
): Filling {
  const waiting = queue.filter(({ athleteId }) => !inLanes.has(athleteId));
  const rested = waiting.filter(({ calledAt, readyAt }) => calledAt !== null || readyAt <= now);
  const called = rested.slice(0, free);
  const resting = waiting
    .filter((place) => !rested.includes(place))
    .sort((a, b) => (a.readyAt < b.readyAt ? -1 : 1));
  return { called, resting: called.length < free ? (resting[0] ?? null) : null };
}
