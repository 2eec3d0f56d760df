import type { TestCode } from "../tests/registry.ts";
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
