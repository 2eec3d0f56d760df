import type { TestCode } from "../tests/registry.ts";

/** The entry time of an attempt, and the attempt it corrects. */
export interface TimedAttempt {
  readonly id: string;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly at: string;
  /** When it was done; null where nobody knows, as for paper without a time; left out: when it was entered. */
  readonly performed?: string | null;
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
    const { performed = attempt.at } = attempt;
    // Nothing was done after it was entered.
    return {
      ...attempt,
      at: latest,
      performed: performed !== null && performed > latest ? latest : performed,
    };
  });
  return backwards.toReversed();
}

type LastTimes = ReadonlyMap<number, ReadonlyMap<TestCode, string>>;

/**
 * Returns when each athlete last did each test, by standing attempts; where nobody knows, when it was entered. A correction
 * keeps the time of the attempt it corrects: fixing a slip an hour later makes nobody rest again.
 */
export function lastDoneByAthlete(attempts: readonly TimedAttempt[]): LastTimes {
  return lastTimes(attempts, ({ at, performed = at }) => performed ?? at);
}

/** Returns the same without the tests of which nobody knows when they were done: they make nobody rest. */
export function lastTimedByAthlete(attempts: readonly TimedAttempt[]): LastTimes {
  return lastTimes(attempts, ({ at, performed = at }) => performed);
}

/** @param timeOf the time that counts of the first attempt of a chain of corrections; null for none */
function lastTimes(
  attempts: readonly TimedAttempt[],
  timeOf: (first: TimedAttempt) => string | null,
): LastTimes {
  const firsts = firstOfEach(attempts);
  const byAthlete = new Map<number, Map<TestCode, string>>();
  for (const attempt of attempts) {
    const { id, athleteId, test, stands } = attempt;
    const time = timeOf(firsts.get(id) ?? attempt);
    if (!stands || time === null) continue;
    const last = byAthlete.get(athleteId) ?? new Map<TestCode, string>();
    byAthlete.set(athleteId, last);
    if (time > (last.get(test) ?? "")) last.set(test, time);
  }
  return byAthlete;
}

/**
 * Returns the time each attempt was performed; null where nobody knows. Attempts come in the order of entry, corrected ones
 * first.
 */
export function performedAt(attempts: readonly TimedAttempt[]): ReadonlyMap<string, string | null> {
  const firsts = firstOfEach(attempts);
  return new Map([...firsts].map(([id, { at, performed = at }]) => [id, performed]));
}

/** Returns the first attempt of the chain of corrections that each attempt is in, by the attempt's id. */
function firstOfEach(attempts: readonly TimedAttempt[]): ReadonlyMap<string, TimedAttempt> {
  const firsts = new Map<string, TimedAttempt>();
  for (const attempt of attempts) firsts.set(attempt.id, firsts.get(attempt.replaces ?? "") ?? attempt);
  return firsts;
}
