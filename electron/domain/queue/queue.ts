import type { Mark } from "../tests/protocol.ts";
import type { TestCode } from "../tests/registry.ts";
import { nextTest } from "./order.ts";

/** An athlete who tests today, with all that decides where and since when they wait. Instants are ISO 8601. */
export interface Runner {
  readonly athleteId: number;
  readonly bib: number;
  readonly checkedIn: string;
  readonly done: ReadonlySet<TestCode>;
  readonly leftOut: ReadonlySet<TestCode>;
  /** Time each test was last done, by standing attempts; of paper without a time, when it was entered. */
  readonly lastDone: ReadonlyMap<TestCode, string>;
  /** The same without such paper, from which on nobody rests; left out where there is none. */
  readonly lastTimed?: ReadonlyMap<TestCode, string>;
  /** Time of the last no-show after a call, by test. */
  readonly absent?: ReadonlyMap<TestCode, string>;
}

/** A place in the queue of one test. */
export interface QueuePlace {
  readonly athleteId: number;
  readonly bib: number;
  /** Time of the last attempt of the test before, or of check-in. */
  readonly waitingSince: string;
  /** End of the rest after the test before; nobody needs rest after check-in, or after a test done at an unknown time. */
  readonly readyAt: string;
  /** Time of the call to this test; null when not called. */
  readonly calledAt: string | null;
}

/** True if a test needs nothing more from the athlete: a circuit stopped early is done, one direction alone is not. */
export function isDone(mark: Mark | Pick<Mark, "state">): boolean {
  return mark.state !== "incomplete";
}

/** Returns the time since when somebody waits for `test`, and the time when they are rested. */
export function waitFor(
  test: TestCode,
  runner: Pick<Runner, "checkedIn" | "lastDone" | "lastTimed" | "absent">,
  restMinutes: number,
): Pick<QueuePlace, "waitingSince" | "readyAt"> {
  const last = lastOther(test, runner.lastDone);
  const timed = lastOther(test, runner.lastTimed ?? runner.lastDone);
  // Athletes who left and were checked in again, or were called and did not come, wait from then on.
  const waitingSince = [runner.checkedIn, last ?? "", runner.absent?.get(test) ?? ""].sort().at(-1);
  return {
    waitingSince: waitingSince ?? runner.checkedIn,
    readyAt:
      timed === undefined
        ? runner.checkedIn
        : new Date(Date.parse(timed) + restMinutes * 60_000).toISOString(),
  };
}

/** Returns when the last test other than this one was done. */
function lastOther(test: TestCode, times: ReadonlyMap<TestCode, string>): string | undefined {
  return [...times]
    .flatMap(([other, at]) => (other === test ? [] : [at]))
    .sort()
    .at(-1);
}

/** Returns the first whole minute at or after a rest's end: "rests until 18:09" is true at 18:09, of 18:08:16 too. */
export function readyMinute(readyAt: string): string {
  return new Date(Math.ceil(Date.parse(readyAt) / 60_000) * 60_000).toISOString();
}

/**
 * Returns the queue of `test`: athletes whose next test it is. Called ones come first, by the time of the call; then
 * the others, longest wait first. `called` holds the times of calls to this test.
 */
export function queueFor(
  test: TestCode,
  runners: readonly Runner[],
  called: ReadonlyMap<number, string>,
  restMinutes: number,
): QueuePlace[] {
  return runners
    .filter(({ done, leftOut }) => nextTest(done, leftOut) === test)
    .map((runner) => ({
      athleteId: runner.athleteId,
      bib: runner.bib,
      ...waitFor(test, runner, restMinutes),
      calledAt: called.get(runner.athleteId) ?? null,
    }))
    .sort(inTurn);
}

function inTurn(a: QueuePlace, b: QueuePlace): number {
  if (a.calledAt !== null || b.calledAt !== null) {
    if (a.calledAt === null) return 1;
    if (b.calledAt === null) return -1;
    return compare(a.calledAt, b.calledAt) || a.bib - b.bib;
  }
  return compare(a.waitingSince, b.waitingSince) || a.bib - b.bib;
}

function compare(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

/** The next athlete to call: the first in the queue who is rested and not called yet. */
export type NextCall =
  | { readonly who: QueuePlace }
  /** Everyone left still rests; this one is ready first. */
  | { readonly resting: QueuePlace }
  | { readonly nobody: true };

/** Picks the next athlete to call from a queue at the instant `now`. */
export function nextCall(queue: readonly QueuePlace[], now: string): NextCall {
  const left = queue.filter(({ calledAt }) => calledAt === null);
  const rested = left.find(({ readyAt }) => readyAt <= now);
  if (rested !== undefined) return { who: rested };
  const [resting] = left.toSorted((a, b) => compare(a.readyAt, b.readyAt));
  return resting === undefined ? { nobody: true } : { resting };
}
