import { type TestCode, testCodes } from "../tests/registry.ts";
import { nextTest } from "./order.ts";
import type { Runner } from "./queue.ts";

/** The progress of one test. Every athlete who tests is in exactly one of done, waiting, later and left out. */
export interface Tally {
  readonly test: TestCode;
  readonly done: number;
  /** Athletes whose next test this is, those who have begun it included. */
  readonly waiting: number;
  /** Athletes with other tests to do before it. */
  readonly later: number;
  readonly leftOut: number;
  /** Athletes who have begun it and not completed it. */
  readonly incomplete: number;
}

/** @param begun athletes who have begun the test without completing it. */
export function tally(test: TestCode, runners: readonly Runner[], begun: ReadonlySet<number>): Tally {
  const counts = { done: 0, waiting: 0, later: 0, leftOut: 0, incomplete: 0 };
  for (const { athleteId, done, leftOut } of runners) {
    counts[queuePlaceOf(test, done, leftOut)] += 1;
    if (begun.has(athleteId) && !done.has(test)) counts.incomplete += 1;
  }
  return { test, ...counts };
}

/** Returns an athlete's state in one test. */
export function queuePlaceOf(
  test: TestCode,
  done: ReadonlySet<TestCode>,
  leftOut: ReadonlySet<TestCode>,
): "done" | "leftOut" | "waiting" | "later" {
  if (done.has(test)) return "done";
  if (leftOut.has(test)) return "leftOut";
  return nextTest(done, leftOut) === test ? "waiting" : "later";
}

/** True if an athlete has no test left. */
export function isFinished(runner: Pick<Runner, "done" | "leftOut">): boolean {
  return nextTest(runner.done, runner.leftOut) === null;
}

/** Counts the tests left for the athletes who are here. */
export function testsLeft(runners: readonly Runner[]): number {
  const left = ({ done, leftOut }: Runner) =>
    testCodes.filter((test) => !done.has(test) && !leftOut.has(test)).length;
  return runners.reduce((sum, runner) => sum + left(runner), 0);
}

/** Minutes that the pace looks back on; with less than `shortest` of them, or fewer tests, there is no pace. */
const lookBack = 30;
const shortest = 10;
const fewest = 5;

/**
 * When the day ends at the pace of the last half hour: a guess that knows nothing of rest. Null when nothing is left or
 * too little was done to tell. Instants are ISO 8601.
 * @param expected how many are still to come; each is taken to do all tests
 */
export function endAtPace(runners: readonly Runner[], now: string, expected = 0): string | null {
  const left = testsLeft(runners) + expected * testCodes.length;
  const end = Date.parse(now);
  const start = end - lookBack * 60_000;
  const times = runners.flatMap(({ lastDone }) => [...lastDone.values()].map((at) => Date.parse(at)));
  const recent = times.filter((at) => at > start && at <= end);
  if (left === 0 || recent.length < fewest) return null;
  // A day that began a quarter of an hour ago has a quarter of an hour of pace.
  const span = end - Math.max(start, Math.min(...times));
  if (span < shortest * 60_000) return null;
  return new Date(end + (left * span) / recent.length).toISOString();
}
