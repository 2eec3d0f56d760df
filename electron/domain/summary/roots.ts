import type { SummaryAttempt } from "./day.ts";

/**
 * Returns the first attempt of each attempt's chain of corrections, by id. It says when a test was done, and who judged
 * it; a correction only says when and by whom a slip was corrected.
 */
function rootsOf(attempts: readonly SummaryAttempt[]): ReadonlyMap<string, SummaryAttempt> {
  const roots = new Map<string, SummaryAttempt>();
  // In the order of entry, so that a corrected attempt comes before its correction.
  for (const attempt of attempts) roots.set(attempt.id, roots.get(attempt.replaces ?? "") ?? attempt);
  return roots;
}

/** A standing attempt with the first one of its chain. */
export interface Rooted {
  readonly attempt: SummaryAttempt;
  readonly root: SummaryAttempt;
}

export function rootedAttempts(attempts: readonly SummaryAttempt[]): Rooted[] {
  const roots = rootsOf(attempts);
  return attempts
    .filter((attempt) => attempt.void === null)
    .map((attempt) => ({ attempt, root: roots.get(attempt.id) ?? attempt }));
}
