import { testCodes } from "../tests/registry.ts";
import type { Athlete, Hall, Moment, Running } from "./hall.ts";
import type { PlannedTurn } from "./told.ts";

/**
 * Returns what a program would know of a day at its second `at`, when everybody was there from the beginning: from the
 * turns that were done and that run then, and from no later one.
 */
export function momentIn(
  hall: Hall,
  athletes: readonly Athlete[],
  turns: readonly PlannedTurn[],
  at: number,
): Moment {
  const done = turns.filter(({ until }) => until <= at).toSorted((a, b) => a.until - b.until);
  const byAthlete = Map.groupBy(done, ({ athlete }) => athlete);
  return {
    hall: { ...hall, breaks: hall.breaks.map(({ from, until }) => ({ from: from - at, until: until - at })) },
    athletes: athletes.flatMap((who) => athleteAt(who, byAthlete.get(who.id) ?? [], hall.rest, at)),
    running: runningAt(turns, at),
    done: done.map(({ athlete, test, from, until, place }) => ({
      ...{ athlete, test, from: from - at, until: until - at },
      heat: `${test} ${place} ${from}`,
    })),
  };
}

function athleteAt(who: Athlete, own: readonly PlannedTurn[], rest: number, at: number): Athlete[] {
  const left = who.left.filter((test) => !own.some((turn) => turn.test === test));
  const last = own.at(-1);
  const rested = last === undefined ? 0 : last.until + rest - at;
  return left.length === 0 ? [] : [{ ...who, arrives: { from: -at, until: -at }, comes: 1, left, rested }];
}

/** Those who started at one place together end together: who is done rests already. */
function runningAt(turns: readonly PlannedTurn[], at: number): Running[] {
  const going = turns.filter(({ from, until }) => from <= at && until > at);
  return testCodes.flatMap((test) => {
    const here = going.filter((turn) => turn.test === test);
    return [...Map.groupBy(here, ({ place }) => place).values()].map((together) => ({
      test,
      athletes: together.map(({ athlete }) => athlete),
      since: Math.min(...together.map(({ from }) => from)) - at,
    }));
  });
}
