import { performedAt, type TimedAttempt } from "../queue/times.ts";
import type { TestCode } from "../tests/registry.ts";

/** How a mark was made, besides its rules: where in the athlete's day, and how rested. Null: not known. */
export interface Made {
  /** The test's position among those that the athlete did that day, from 1. */
  readonly position: number | null;
  /** Whole minutes from the last entry of the test before to the first of this one; null for the first test too. */
  readonly restMinutes: number | null;
}

interface Turn {
  readonly test: TestCode;
  readonly first: string;
  readonly last: string;
}

/**
 * Returns how an athlete's marks of one day were made, by test, from standing attempts; a correction keeps the time of
 * what it corrects. Empty where nobody knows of some of them when they were done, as for paper without a time.
 */
export function madeOn(attempts: readonly TimedAttempt[]): ReadonlyMap<TestCode, Made> {
  const standing = attempts.filter(({ stands }) => stands);
  const doneAt = performedAt(attempts);
  if (standing.some(({ id }) => doneAt.get(id) === null)) return new Map();
  const turns = turnsOf(standing, doneAt).toSorted((a, b) => a.first.localeCompare(b.first));
  return new Map(
    turns.map(({ test, first }, index) => {
      const before = turns.slice(0, index).map(({ last }) => last);
      return [test, { position: index + 1, restMinutes: minutesSince(before.toSorted().at(-1), first) }];
    }),
  );
}

function turnsOf(standing: readonly TimedAttempt[], doneAt: ReadonlyMap<string, string | null>): Turn[] {
  return [...Map.groupBy(standing, ({ test }) => test)].map(([test, own]) => {
    const times = own.map(({ id, at }) => doneAt.get(id) ?? at).toSorted();
    return { test, first: times[0] ?? "", last: times.at(-1) ?? "" };
  });
}

/** A test that began before the other's last entry had no rest that could be told. */
function minutesSince(last: string | undefined, first: string): number | null {
  if (last === undefined || first < last) return null;
  return Math.floor((Date.parse(first) - Date.parse(last)) / 60_000);
}
