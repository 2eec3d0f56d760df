import type { Hall, Station } from "../../../electron/domain/plan/hall.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { Draws } from "./draws.ts";
import type { TrueHall } from "./true-hall.ts";
import { turnSeconds, wayThere } from "./true-turns.ts";

/** Somebody on the list, as their day went. Times are seconds from the day's beginning. */
export interface TruePerson {
  readonly id: number;
  /** When they were checked in; null for somebody who never came. */
  readonly at: number | null;
  /** The tests that they were to do when they were checked in. */
  readonly tests: readonly TestCode[];
  /** When they left for good, or were no longer waited for; null for those who stayed. */
  readonly gone: number | null;
}

/** One athlete's turn. */
export interface TrueTurn {
  readonly athlete: number;
  readonly test: TestCode;
  readonly place: number;
  readonly called: number;
  readonly since: number;
  readonly end: number;
  /** When the program was told. */
  readonly entered: number;
  readonly heat: string;
}

export interface TrueDay {
  readonly people: readonly TruePerson[];
  readonly turns: readonly TrueTurn[];
  /** When the last one was done. */
  readonly end: number;
}

interface Walking {
  readonly id: number;
  readonly at: number;
  left: TestCode[];
  done: number;
  readonly leavesAfter: number;
  busy: boolean;
  ready: number;
  waits: number;
  gone: number | null;
}

interface Place {
  readonly station: Station;
  readonly number: number;
  until: number;
  heats: number;
}

/** Nobody is kept waiting for a fuller heat longer than this. */
const longestPatience = 240;
/** A day that is not over by then has a fault. */
const longest = 24 * 3_600;

/** Holds a day, second by second. `hall`: with another place, lane, judge or rest than the true one's, to compare. */
export function holdDay(truth: TrueHall, hall: Hall = truth.hall): TrueDay {
  const draws = new Draws(truth.seed);
  const walking = truth.roster.flatMap((athlete) => comesIn(truth, draws, athlete.id));
  const places = hall.stations.flatMap((station) =>
    Array.from({ length: station.places }, (_, number) => ({ station, number, until: 0, heats: 0 })),
  );
  const turns: TrueTurn[] = [];
  let now = 0;
  for (; walking.some(({ left, gone }) => left.length > 0 && gone === null); now += 1) {
    if (now > longest) throw new Error(`The hall of ${truth.seed} never ends`);
    for (const turn of turns) if (Math.ceil(turn.end) === now) standsUp(walking, turn, hall.rest);
    if (hall.breaks.some(({ from, until }) => now >= from && now < until)) continue;
    for (const place of places) turns.push(...startsAt(place, { truth, hall, draws, walking, places, now }));
  }
  return {
    people: truth.roster.map(({ id }) => personOf(id, walking, truth, draws)),
    turns,
    end: Math.max(...turns.map(({ end }) => end)),
  };
}

function comesIn(truth: TrueHall, draws: Draws, id: number): Walking[] {
  if (!draws.happens(`${id} comes`, truth.comes)) return [];
  const window = truth.roster.find((athlete) => athlete.id === id)?.arrives ?? { from: 0, until: 0 };
  const late = draws.happens(`${id} is late`, 0.1) ? draws.uniform(`lateness of ${id}`, 5, 30) * 60 : 0;
  const at =
    draws.uniform(`arrival of ${id}`, window.from, window.until) +
    late +
    draws.gamma(`check-in of ${id}`, 1, 60);
  const leavesAfter = draws.happens(`${id} leaves`, 0.03) ? draws.whole(`${id} leaves after`, 1, 4) : 9;
  const rest = { done: 0, leavesAfter, busy: false, ready: at, waits: at, gone: null };
  return [{ id, at, left: testsOf(truth, draws, id), ...rest }];
}

/** One of seventeen skips a test, as decided at check-in. */
function testsOf(truth: TrueHall, draws: Draws, id: number): TestCode[] {
  const skipped = draws.happens(`${id} skips`, 0.06) ? draws.whole(`skip of ${id}`, 0, 4) : -1;
  const all = truth.roster.find((athlete) => athlete.id === id)?.left ?? [];
  return all.filter((_, index) => index !== skipped);
}

function standsUp(walking: readonly Walking[], { athlete, end }: TrueTurn, rest: number): void {
  const who = walking.find(({ id }) => id === athlete);
  if (who === undefined) return;
  who.busy = false;
  who.left = who.left.slice(1);
  who.done += 1;
  who.ready = end + rest;
  who.waits = end;
  if (who.done >= who.leavesAfter && who.left.length > 0) who.gone = end + 300;
}

interface Now {
  readonly truth: TrueHall;
  readonly hall: Hall;
  readonly draws: Draws;
  readonly walking: readonly Walking[];
  readonly places: readonly Place[];
  readonly now: number;
}

/** Starts a heat or a turn at a free place, if its volunteer would. */
function startsAt(place: Place, { truth, hall, draws, walking, places, now }: Now): TrueTurn[] {
  const { test, lanes } = place.station;
  const own = truth.stations.get(test);
  if (place.until > now || own === undefined) return [];
  if (own.pause !== null && now >= own.pause.from && now < own.pause.until) return [];
  if (hall.judges !== null && places.filter(({ until }) => until > now).length >= hall.judges) return [];
  const next = walking.filter(
    (who) => who.at <= now && !who.busy && who.gone === null && who.left[0] === test,
  );
  const rested = next.filter(({ ready }) => ready <= now).sort((a, b) => a.waits - b.waits || a.id - b.id);
  const [first] = rested;
  if (first === undefined) return [];
  const soon = next.some(({ ready }) => ready > now && ready <= now + own.patience);
  if (rested.length < lanes && soon && now - first.ready < longestPatience) return [];
  return start(place, rested.slice(0, lanes), { truth, draws, now });
}

function start(
  place: Place,
  called: Walking[],
  { truth, draws, now }: Pick<Now, "truth" | "draws" | "now">,
): TrueTurn[] {
  const { test } = place.station;
  const since = now + Math.max(...called.map(({ id }) => wayThere(draws, id, test)));
  const heat = `${test} ${place.number} ${place.heats}`;
  const turns = called.map(({ id }) => {
    const end = since + turnSeconds(truth, draws, id, test, since);
    return {
      athlete: id,
      test,
      place: place.number,
      called: now,
      since,
      end,
      entered: enteredAt(truth, draws, id, test, end),
      heat,
    };
  });
  for (const who of called) who.busy = true;
  place.heats += 1;
  const mean = truth.stations.get(test)?.changeOver ?? 0;
  const [one] = called;
  place.until =
    Math.max(...turns.map(({ end }) => end)) +
    draws.gamma(`change-over after ${one?.id} at ${test}`, 3, mean);
  return turns;
}

/** A live heat tells at once, a typed result some seconds later, paper at the next full ten minutes. */
function enteredAt(truth: TrueHall, draws: Draws, athlete: number, test: TestCode, end: number): number {
  const own = truth.stations.get(test);
  if (own?.paper === true) return Math.ceil((end + 60) / 600) * 600;
  return own?.live === true ? end : end + draws.uniform(`typing of ${athlete} at ${test}`, 3, 20);
}

/** Of those who never came, every second is marked so within the hour after their window; the others stay expected. */
function personOf(id: number, walking: readonly Walking[], truth: TrueHall, draws: Draws): TruePerson {
  const window = truth.roster.find((each) => each.id === id)?.arrives;
  const came = walking.find((who) => who.id === id);
  if (came !== undefined) return { id, at: came.at, tests: testsOf(truth, draws, id), gone: came.gone };
  const told = draws.happens(`${id} is marked`, 0.5) ? draws.uniform(`marking of ${id}`, 10, 60) * 60 : null;
  return { id, at: null, tests: [], gone: told === null ? null : (window?.until ?? 0) + told };
}
