import type { QueuePlace } from "../queue/queue.ts";

/** Whom to call into free lanes. */
export interface Filling {
  readonly called: readonly QueuePlace[];
  /** Whoever is rested first among those who would be next, when lanes stay free because they still rest. */
  readonly resting: QueuePlace | null;
}

/**
 * Picks from a queue in turn: whoever was called by hand comes first, rested or not, for somebody decided so; then those
 * who are rested. Whoever is in a lane already is passed over.
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
