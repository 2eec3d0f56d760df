/** Which part of a heat's time is to be scheduled next. Pure; times in ms of the heat's clock. */

/** From `from`, which is in it, to `until`, which is not. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/**
 * The span to schedule now so that everything until `lookAheadMs` from now is. Spans follow each other without gap or
 * overlap however late or early they are asked for. Null when nothing new has come into reach.
 * At first (`coveredUntil` null) it reaches back a little, for a cue that is due this very moment.
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
