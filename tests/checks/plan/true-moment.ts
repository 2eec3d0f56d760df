import type { Athlete, DoneTurn, Moment, Running } from "../../../electron/domain/plan/hall.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import type { TrueDay, TruePerson, TrueTurn } from "./true-day.ts";
import type { TrueHall } from "./true-hall.ts";

/** What the program would know of a true day at second `at` of it: no draw of the future, no time of the hall's own. */
export function momentOf(truth: TrueHall, day: TrueDay, at: number): Moment {
  const known = day.turns.filter(({ entered }) => entered <= at);
  return {
    hall: {
      ...truth.hall,
      breaks: truth.hall.breaks.map(({ from, until }) => ({ from: from - at, until: until - at })),
    },
    athletes: day.people.flatMap((person) => athleteAt(truth, person, known, at)),
    running: runningAt(truth, day, at),
    done: doneOf(truth, known, at),
  };
}

function athleteAt(truth: TrueHall, person: TruePerson, known: readonly TrueTurn[], at: number): Athlete[] {
  const listed = truth.roster.find(({ id }) => id === person.id);
  if (listed === undefined || (person.gone !== null && person.gone <= at)) return [];
  const arrives = { from: listed.arrives.from - at, until: listed.arrives.until - at };
  if (person.at === null || person.at > at) return [{ ...listed, arrives }];
  const own = known.filter(({ athlete }) => athlete === person.id);
  const left = person.tests.filter((test) => !own.some((turn) => turn.test === test));
  if (left.length === 0) return [];
  const last = own
    .filter(({ test }) => truth.stations.get(test)?.paper !== true)
    .map(({ entered }) => entered);
  const rested = last.length === 0 ? 0 : Math.max(...last) + truth.hall.rest - at;
  const here = { from: person.at - at, until: person.at - at };
  return [{ ...listed, arrives: here, comes: 1, left, rested }];
}

/** The heats and turns that go on: by their start where the program runs them, by their call where results are typed. */
function runningAt(truth: TrueHall, day: TrueDay, at: number): Running[] {
  const going = day.turns.filter(({ called, entered }) => called <= at && entered > at);
  const told = going.filter(({ test }) => truth.stations.get(test)?.paper !== true);
  return [...Map.groupBy(told, ({ heat }) => heat).values()].flatMap((heat) => {
    const [first] = heat;
    if (first === undefined) return [];
    const since = isLive(truth, first.test) && first.since <= at ? first.since : first.called;
    return [{ test: first.test, athletes: heat.map(({ athlete }) => athlete), since: since - at }];
  });
}

/** The turns whose time is known: none of paper. */
function doneOf(truth: TrueHall, known: readonly TrueTurn[], at: number): DoneTurn[] {
  return known
    .filter(({ test }) => truth.stations.get(test)?.paper !== true)
    .sort((a, b) => a.entered - b.entered)
    .map(({ athlete, test, since, entered, heat }) => {
      const live = isLive(truth, test);
      return { athlete, test, from: live ? since - at : null, until: entered - at, heat: live ? heat : null };
    });
}

function isLive(truth: TrueHall, test: TestCode): boolean {
  return truth.stations.get(test)?.live === true;
}

/** What the program told before: tests left times the pace of the last half hour. Null where it told nothing. */
export function endAtPaceOf(moment: Moment): number | null {
  const left = moment.athletes.reduce((sum, athlete) => sum + athlete.left.length, 0);
  const recent = moment.done.filter(({ until }) => until > -1_800);
  const begun = Math.min(...moment.done.map(({ until }) => until));
  const span = Math.min(1_800, -begun);
  return left === 0 || recent.length < 5 || span < 600 ? null : (left * span) / recent.length;
}
