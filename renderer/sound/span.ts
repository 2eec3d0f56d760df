/** The part of a heat's time to schedule next. Pure; times in ms of the heat's clock. */

/** A span from `from` (included) to `until` (excluded). */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/**
 * Returns the span to schedule now so that everything until `lookAheadMs` from now is scheduled. Spans follow each
 * other without gap or overlap, however late or early the calls are. Null when nothing new has come into reach. At
 * first (`coveredUntil` null) it reaches back a little, for a cue that is due at this moment.
 */
export function nextSpan(
  coveredUntil: number | null,
  elapsedMs: number,
  lookAheadMs: number,
  reachBackMs: number,
): Span | null {
  const from = coveredUntil ?? elapsedMs - reachBackMs;
  const until = elapsedMs + lookAheadMs;
  return until > from ? { from, until } : null;
}
