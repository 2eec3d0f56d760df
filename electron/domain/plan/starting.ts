import type { DayState } from "./day-state.ts";
import type { Draws } from "./draws.ts";
import type { Break } from "./hall.ts";
import { addMoment } from "./moments.ts";
import { at } from "./numbers.ts";
import { changeOverOf, turnOf } from "./times.ts";
import { finishTest, leaveQueues } from "./walk.ts";

/** Starts everything that can start at a moment. */
export function startAll(state: DayState, now: number): void {
  const { hall, free, stations } = state.floor;
  if (hall.judges !== null || free !== 0) {
    startInTurn(state, now);
    return;
  }
  for (let station = 0; station < stations; station += 1) {
    while (leadOf(state, station, now) >= 0) start(state, station, now);
  }
}

/** Where stations share judges or athletes, the one starts first whose next athlete has waited longest. */
function startInTurn(state: DayState, now: number): void {
  while (judgesBusy(state, now) < (state.floor.hall.judges ?? Number.POSITIVE_INFINITY)) {
    const station = firstToStart(state, now);
    if (station < 0) return;
    start(state, station, now);
  }
}

function judgesBusy({ placeFree }: DayState, now: number): number {
  let busy = 0;
  for (const places of placeFree) for (const free of places) if (free > now) busy += 1;
  return busy;
}

function firstToStart(state: DayState, now: number): number {
  let best = -1;
  let longest = Number.POSITIVE_INFINITY;
  for (let station = 0; station < state.floor.stations; station += 1) {
    const lead = leadOf(state, station, now);
    const since = lead < 0 ? Number.POSITIVE_INFINITY : at(state.since, lead);
    const isFuller = since === longest && best >= 0 && ahead(state, station) > ahead(state, best);
    if (since < longest || isFuller) [best, longest] = [station, since];
  }
  return best;
}

/** Returns how long a station would take for all who wait or rest for it: of two for one athlete, the fuller starts. */
function ahead({ floor, queue }: DayState, station: number): number {
  const here = floor.hall.stations[station];
  if (here === undefined) return 0;
  const each = here.turn.median + here.changeOver.median;
  return ((queue[station]?.length ?? 0) * each) / (here.places * here.lanes);
}

/**
 * Returns who leads the next start at a station: who has waited longest among the rested; -1 when nothing starts now. A
 * heat that is not full waits for athletes who rest for it or are about to arrive, as long as the day's patience, and
 * starts at once when there are none. Common practice, no source.
 */
function leadOf(state: DayState, station: number, now: number): number {
  const waiting = state.queue[station];
  if (waiting === undefined || now < at(state.soonest, station)) return -1;
  const freed = earliest(state.placeFree[station]);
  if (freed > now || isPausing(state.draws, station, now)) return -1;
  let [rested, lead, firstReady, nextReady] = [0, -1, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const athlete of waiting) {
    const ready = at(state.ready, athlete);
    if (ready > now) {
      if (ready < nextReady) nextReady = ready;
      continue;
    }
    rested += 1;
    if (ready < firstReady) firstReady = ready;
    if (lead < 0 || isBefore(state, athlete, lead)) lead = athlete;
  }
  state.soonest[station] = Math.min(firstReady, nextReady);
  if (rested === 0 || rested >= (state.floor.hall.stations[station]?.lanes ?? 1)) return lead;
  const deadline = Math.max(freed, firstReady) + at(state.draws.patience, station);
  return waitsForMore(state, station, now, deadline, nextReady) ? -1 : lead;
}

function isPausing({ pauseFrom, pauseFor }: Draws, station: number, now: number): boolean {
  return now >= at(pauseFrom, station) && now < at(pauseFrom, station) + at(pauseFor, station);
}

function waitsForMore(
  state: DayState,
  station: number,
  now: number,
  deadline: number,
  nextReady: number,
): boolean {
  if (now >= deadline) return false;
  if (nextReady <= deadline) return true;
  if (at(state.lastArrival, station) <= now) return false;
  if (at(state.heldUntil, station) !== deadline) addMoment(state.moments, deadline);
  state.heldUntil[station] = deadline;
  return true;
}

function earliest(places: readonly number[] | undefined): number {
  let first = Number.POSITIVE_INFINITY;
  for (const free of places ?? []) if (free < first) first = free;
  return first;
}

function isBefore({ since }: DayState, one: number, other: number): boolean {
  const difference = at(since, one) - at(since, other);
  return difference < 0 || (difference === 0 && one < other);
}

/**
 * Calls a heat or a turn to the place that has been free longest, with those who have waited longest. It starts after the
 * change-over, and not in a break.
 */
function start(state: DayState, station: number, now: number): void {
  const places = state.placeFree[station] ?? [];
  const place = places.indexOf(earliest(places));
  const lanes = state.floor.hall.stations[station]?.lanes ?? 1;
  const lead = longestWaiting(state, station, now);
  const from = afterBreak(state.floor.hall.breaks, now + changeOverOf(state, lead, station));
  let end = from;
  for (let lane = 0, next = lead; lane < lanes && next >= 0; lane += 1) {
    end = Math.max(end, begin(state, next, station, place, from));
    next = lane + 1 < lanes ? longestWaiting(state, station, now) : -1;
  }
  places[place] = end;
  addMoment(state.moments, end);
}

function afterBreak(breaks: readonly Break[], moment: number): number {
  return breaks.reduce((later, { from, until }) => (later >= from && later < until ? until : later), moment);
}

function longestWaiting(state: DayState, station: number, now: number): number {
  let lead = -1;
  for (const athlete of state.queue[station] ?? []) {
    if (at(state.ready, athlete) <= now && (lead < 0 || isBefore(state, athlete, lead))) lead = athlete;
  }
  return lead;
}

/** Starts one athlete's turn and returns its end. */
function begin(state: DayState, athlete: number, station: number, place: number, from: number): number {
  const row = athlete * state.floor.stations + station;
  const end = from + turnOf(state, athlete, station);
  state.readied[row] = at(state.ready, athlete);
  state.starts[row] = from;
  state.ends[row] = end;
  state.places[row] = place;
  leaveQueues(state, athlete, station);
  finishTest(state, athlete, end);
  return end;
}
