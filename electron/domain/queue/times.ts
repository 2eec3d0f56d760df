import type { TestCode } from "../tests/registry.ts";

/** The entry time of an attempt, and the attempt it corrects. */
export interface TimedAttempt {
  readonly id: string;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly at: string;
  readonly replaces: string | null;
  readonly stands: boolean;
}

/**
 * Returns attempts in the order of entry, none with a time after that of a later one or after `now`. Such a time comes
 * from a clock that was set back since, and would make its athlete rest until the clock is there again.
 * @param now ISO 8601
 */
export function upTo(attempts: readonly TimedAttempt[], now: string): TimedAttempt[] {
  let latest = now;
  const backwards = attempts.toReversed().map((attempt) => {
    if (attempt.at < latest) latest = attempt.at;
    return { ...attempt, at: latest };
  });
  return backwards.toReversed();
}

/**
 * Returns when each athlete last did each test, by standing attempts. A correction keeps the time of the attempt it
 * corrects: fixing a slip an hour later makes nobody rest again.
 */
export function lastDoneByAthlete(
  attempts: readonly TimedAttempt[],
): ReadonlyMap<number, ReadonlyMap<TestCode, string>> {
  const doneAt = performedAt(attempts);
  const byAthlete = new Map<number, Map<TestCode, string>>();
  for (const { id, athleteId, test, at, stands } of attempts) {
    if (!stands) continue;
    const last = byAthlete.get(athleteId) ?? new Map<TestCode, string>();
    byAthlete.set(athleteId, last);
    const time = doneAt.get(id) ?? at;
    if (time > (last.get(test) ?? "")) last.set(test, time);
  }
  return byAthlete;
}

/** Returns the time each attempt was performed. Attempts come in the order of entry, corrected ones first. */
export function performedAt(attempts: readonly TimedAttempt[]): ReadonlyMap<string, string> {
  const doneAt = new Map<string, string>();
  for (const { id, at, replaces } of attempts) doneAt.set(id, doneAt.get(replaces ?? "") ?? at);
  return doneAt;
}
