import { arrivalOf, isHere } from "./arrival.ts";
import type { DayState } from "./day-state.ts";
import type { UnderWay } from "./floor.ts";
import type { Athlete } from "./hall.ts";
import { addMoment } from "./moments.ts";
import { at } from "./numbers.ts";
import { turnOf } from "./times.ts";
import { finishTest, joinQueues } from "./walk.ts";

/** Sets a day up as it is at moment 0: places, heats that run, who is here, and when the others will be. */
export function openDay(state: DayState): void {
  const { floor } = state;
  addMoment(state.moments, 0);
  for (const { until } of floor.hall.breaks) if (until > 0) addMoment(state.moments, until);
  for (const [station, from] of state.draws.pauseFrom.entries()) {
    if (Number.isFinite(from)) addMoment(state.moments, from + at(state.draws.pauseFor, station));
  }
  for (const [station, ends] of floor.lastEnds.entries()) freePlaces(state, station, ends);
  for (const index of floor.athletes.keys()) seat(state, index);
  state.coming.sort((a, b) => at(state.ready, b) - at(state.ready, a));
  for (const running of floor.underWay) goOn(state, running);
}

function freePlaces(state: DayState, station: number, ends: readonly number[]): void {
  const free = state.placeFree[station] ?? [];
  for (const [place, end] of ends.entries()) free[place] = end;
}

function seat(state: DayState, index: number): void {
  const { floor, draws } = state;
  const athlete = floor.athletes[index];
  if (athlete === undefined) return;
  state.staysFor[index] = testsUntilLeaving(at(draws.leaves, index), floor.customs.leaves);
  if (floor.underWay.some(({ athletes }) => athletes.includes(index))) return;
  if (isHere(athlete))
    wait(state, index, sinceOf(state, index), Math.max(athlete.rested, athlete.arrives.until));
  else
    arrive(
      state,
      index,
      arrivalOf(floor.isAhead ? notBefore(athlete) : athlete, index, draws, floor.customs),
    );
}

/** Returns the athlete with a window that does not begin before moment 0. */
function notBefore(athlete: Athlete): Athlete {
  const { from, until } = athlete.arrives;
  return { ...athlete, arrives: { from: Math.max(0, from), until: Math.max(0, until) } };
}

/** Returns since when somebody who is here waits: since the end of the test before, else since they came. */
function sinceOf({ floor }: DayState, index: number): number {
  const athlete = floor.athletes[index];
  if (athlete === undefined) return 0;
  const isFirst = athlete.left[0] === floor.hall.stations[0]?.test;
  return isFirst ? athlete.arrives.until : Math.max(athlete.arrives.until, athlete.rested - floor.hall.rest);
}

function arrive(state: DayState, index: number, when: number | null): void {
  const left = at(state.left, index);
  if (when === null || left === 0) return;
  const first = 31 - Math.clz32(left & -left);
  state.lastArrival[first] = Math.max(at(state.lastArrival, first), when);
  state.since[index] = when;
  state.ready[index] = when;
  state.coming.push(index);
  addMoment(state.moments, when);
}

/** Lets those arrive who are there by now: nobody waits in a queue before. */
export function admit(state: DayState, now: number): void {
  for (;;) {
    const next = state.coming.at(-1);
    if (next === undefined || at(state.ready, next) > now) return;
    state.coming.pop();
    joinQueues(state, next);
  }
}

function wait(state: DayState, index: number, since: number, ready: number): void {
  state.since[index] = since;
  state.ready[index] = ready;
  joinQueues(state, index);
  if (ready > 0) addMoment(state.moments, ready);
}

/** Returns after how many tests somebody leaves who leaves after each with the same chance. */
function testsUntilLeaving(uniform: number, chance: number): number {
  return chance === 0
    ? Number.POSITIVE_INFINITY
    : 1 + Math.floor(Math.log(1 - uniform) / Math.log(1 - chance));
}

/** Ends what runs already: as a turn of at least the time that it has lasted. */
function goOn(state: DayState, { station, athletes, since }: UnderWay): void {
  const elapsed = -since;
  const times = athletes.map((athlete) => turnOf(state, athlete, station));
  const slowest = times.indexOf(Math.max(...times));
  times[slowest] = longerThan(state, station, elapsed, times[slowest] ?? 0);
  athletes.forEach((athlete, index) => {
    const end = Math.max(0, since + (times[index] ?? 0));
    state.starts[athlete * state.floor.stations + station] = since;
    state.ends[athlete * state.floor.stations + station] = end;
    finishTest(state, athlete, end);
  });
  occupy(state, station, since + (times[slowest] ?? 0));
}

function occupy(state: DayState, station: number, end: number): void {
  const places = state.placeFree[station] ?? [];
  const place = places.indexOf(Number.NEGATIVE_INFINITY);
  if (place >= 0) places[place] = end;
  addMoment(state.moments, end);
}

/** Draws a turn again until it lasts longer than it has lasted already; after so many goes some more is added. */
function longerThan(state: DayState, station: number, elapsed: number, first: number): number {
  const { turn } = state.floor.hall.stations[station] ?? { turn: { median: 0, sigma: 0 } };
  const median = turn.median * at(state.draws.pace, station);
  let time = first;
  while (time <= elapsed && state.spareUsed < state.draws.spare.length && turn.sigma > 0) {
    time = median * Math.exp(turn.sigma * at(state.draws.spare, state.spareUsed));
    state.spareUsed += 1;
  }
  return time > elapsed ? time : elapsed + median / 4;
}
