import { type TestCode, testCodes } from "../tests/registry.ts";
import type { QueuePlace, Runner } from "./queue.ts";

/** What a station's calls cost those who are not called. */
export interface StationPace {
  /** Seconds from one start at a place to the next. */
  readonly cycle: number;
  /** Athletes who start in that time: places, each with its lanes. */
  readonly together: number;
}

/** What calls go by besides who has waited longest. Times in seconds. */
export interface Passing {
  /** The most that anybody may lose on a day by others being called before them; 0: first come, first served. */
  readonly bound: number;
  readonly pace: StationPace;
  /** How many have been called before each athlete here who came after them, and what each has lost at other stations. */
  readonly passes: ReadonlyMap<number, number>;
  readonly lostElsewhere: ReadonlyMap<number, number>;
  /** Work and rest that each athlete has ahead after this test. */
  readonly ahead: ReadonlyMap<number, number>;
}

/** Somebody is only called before others who has at least so many seconds more ahead: less is within what turns vary. */
const worthIt = 60;

/**
 * Returns those who are rested in the order in which to call them: whoever has most work and rest ahead before whoever came
 * first, as long as nobody loses more than the bound by it. Who has a place now is taken for the first `free` of them; where
 * all have one, it is the order in which they came. Longest tail first is the rule of Jackson 1955 (Management Sciences
 * Research Project, report 43; from memory).
 * @param rested in the order in which they came; nobody who rests is among them
 */
export function callOrder(rested: readonly QueuePlace[], free: number, passing: Passing): QueuePlace[] {
  const line = [...rested];
  const called: QueuePlace[] = [];
  const passes = new Map(passing.passes);
  while (line.length > free - called.length && called.length < free && passing.bound > 0) {
    const at = firstToCall(line, passes, passing);
    for (const { athleteId } of line.slice(0, at)) passes.set(athleteId, (passes.get(athleteId) ?? 0) + 1);
    called.push(...line.splice(at, 1));
  }
  return [...called, ...line];
}

/** The one of a line with most ahead, of those before whom nobody has lost all that they may lose. */
function firstToCall(
  line: readonly QueuePlace[],
  passes: ReadonlyMap<number, number>,
  passing: Passing,
): number {
  const ahead = (at: number) => passing.ahead.get(line[at]?.athleteId ?? -1) ?? 0;
  let best = 0;
  for (const [at, { athleteId }] of line.entries()) {
    if (ahead(at) >= ahead(best) + worthIt) best = at;
    const lost = lostBy((passes.get(athleteId) ?? 0) + 1, passing.pace);
    if (lost + (passing.lostElsewhere.get(athleteId) ?? 0) > passing.bound) break;
  }
  return best;
}

/** Returns by how many seconds at most somebody starts later at a station before whom so many were called who came after. */
export function lostBy(passes: number, { cycle, together }: StationPace): number {
  return Math.ceil(passes / together) * cycle;
}

/** Returns how many seconds of work and rest an athlete has ahead after a test. */
export function aheadAfter(
  test: TestCode,
  { done, leftOut }: Pick<Runner, "done" | "leftOut">,
  cycles: Readonly<Record<TestCode, number>>,
  rest: number,
): number {
  return testCodes
    .slice(testCodes.indexOf(test) + 1)
    .filter((later) => !done.has(later) && !leftOut.has(later))
    .reduce((sum, later) => sum + rest + cycles[later], 0);
}

/** When somebody came to a station and was called there, or done: what is known of it. */
interface Visit {
  readonly athleteId: number;
  readonly since: string;
  /** The end of their turn, or their call; null while they wait. */
  readonly until: string | null;
}

/**
 * Returns how many were called to a test before each athlete who had waited longer, as far as the ends of their turns and
 * calls that stand tell. Who ended sooner is taken to have been called sooner.
 * @param called times of the calls to this test that stand (ISO 8601)
 */
export function passesAt(
  test: TestCode,
  runners: readonly Runner[],
  called: ReadonlyMap<number, string>,
  restMinutes: number,
): ReadonlyMap<number, number> {
  const visits = runners.flatMap((runner) => visitOf(test, runner, called) ?? []);
  return new Map(
    visits.map(({ athleteId, since, until }) => {
      const rested = new Date(Date.parse(since) + restMinutes * 60_000).toISOString();
      const before = visits.filter(
        (other) =>
          other.until !== null &&
          other.since > since &&
          other.until > rested &&
          (until === null || other.until < until),
      );
      return [athleteId, before.length];
    }),
  );
}

function visitOf(test: TestCode, runner: Runner, called: ReadonlyMap<number, string>): Visit | null {
  const earlier = testCodes.slice(0, testCodes.indexOf(test));
  const isDone = runner.done.has(test);
  if (!isDone && (runner.leftOut.has(test) || earlier.some((each) => isLeft(runner, each)))) return null;
  const times = earlier.flatMap((each) => runner.lastDone.get(each) ?? []);
  const since = [runner.checkedIn, runner.absent?.get(test) ?? "", ...times].sort().at(-1) ?? "";
  const until = isDone ? runner.lastDone.get(test) : called.get(runner.athleteId);
  return { athleteId: runner.athleteId, since, until: until ?? null };
}

function isLeft({ done, leftOut }: Runner, test: TestCode): boolean {
  return !done.has(test) && !leftOut.has(test);
}
