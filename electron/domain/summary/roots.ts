import type { SummaryAttempt } from "./day.ts";

/**
 * The attempt with which a chain of corrections began, by the id of each attempt: it says when a test was done, and who
 * judged it; a correction only says when and by whom a slip was put right.
 */
function rootsOf(attempts: readonly SummaryAttempt[]): ReadonlyMap<string, SummaryAttempt> {
  const roots = new Map<string, SummaryAttempt>();
  // In the order of entry, so that what one corrects stands before it.
  for (const attempt of attempts) roots.set(attempt.id, roots.get(attempt.replaces ?? "") ?? attempt);
  return roots;
}

/** Attempts that stand, each with the one it goes back to. */
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
