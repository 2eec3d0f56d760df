import type { Mark } from "../tests/protocol.ts";
import type { TestCode } from "../tests/registry.ts";
import { nextTest } from "./order.ts";

/** Somebody who takes part today, with all that decides where and since when they wait. Instants are ISO 8601. */
export interface Runner {
  readonly athleteId: number;
  readonly bib: number;
  readonly checkedIn: string;
  readonly done: ReadonlySet<TestCode>;
  readonly leftOut: ReadonlySet<TestCode>;
  /** When each test was last done, by the attempts that stand. */
  readonly lastDone: ReadonlyMap<TestCode, string>;
  /** When they were last called to a test and did not come. */
  readonly absent?: ReadonlyMap<TestCode, string>;
}

/** A place in the queue of one test. */
export interface QueuePlace {
  readonly athleteId: number;
  readonly bib: number;
  /** Since the last attempt of the test before, or since check-in. */
  readonly waitingSince: string;
  /** When the rest after the test before is over; nobody needs rest from check-in. */
  readonly readyAt: string;
  /** Since when they are called to this test; null when they are not. */
  readonly calledAt: string | null;
}

/** Whether a test needs nothing more from the athlete: a circuit stopped early is done, one direction alone is not. */
export function isDone(mark: Mark): boolean {
  return mark.state !== "incomplete";
}

/** Since when somebody has waited for `test`, and when they are rested. */
export function waitFor(
  test: TestCode,
  runner: Pick<Runner, "checkedIn" | "lastDone" | "absent">,
  restMinutes: number,
): Pick<QueuePlace, "waitingSince" | "readyAt"> {
  const others = [...runner.lastDone].filter(([other]) => other !== test).map(([, at]) => at);
  const last = others.sort().at(-1);
  // Whoever left and was checked in again, or was called and did not come, waits from then on.
  const waitingSince = [runner.checkedIn, last ?? "", runner.absent?.get(test) ?? ""].sort().at(-1);
  return {
    waitingSince: waitingSince ?? runner.checkedIn,
    readyAt:
      last === undefined ? runner.checkedIn : new Date(Date.parse(last) + restMinutes * 60_000).toISOString(),
  };
}

/**
 * Who waits for `test`: those whose next test in the held order it is. Called ones first (whoever was called first),
 * then whoever has waited longest. `called` says since when athletes are called to this test.
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

/** Who is called next: the first of the queue who is rested and not called yet. */
export type NextCall =
  | { readonly who: QueuePlace }
  /** All who are left still rest; the one who is ready first. */
  | { readonly resting: QueuePlace }
  | { readonly nobody: true };

/** Picks whom to call from a queue in turn at the instant `now`. */
export function nextCall(queue: readonly QueuePlace[], now: string): NextCall {
  const left = queue.filter(({ calledAt }) => calledAt === null);
  const rested = left.find(({ readyAt }) => readyAt <= now);
  if (rested !== undefined) return { who: rested };
  const [resting] = left.toSorted((a, b) => compare(a.readyAt, b.readyAt));
  return resting === undefined ? { nobody: true } : { resting };
}
