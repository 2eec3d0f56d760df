import type { DayState } from "./day-state.ts";
import { addMoment } from "./moments.ts";
import { at } from "./numbers.ts";

/** Puts an athlete into the queues of the stations that they may go to next. */
export function joinQueues(state: DayState, athlete: number): void {
  let next = nextStations(at(state.left, athlete), state.floor.free);
  while (next !== 0) {
    const station = 31 - Math.clz32(next);
    state.queue[station]?.push(athlete);
    state.soonest[station] = Math.min(at(state.soonest, station), at(state.ready, athlete));
    next &= ~(1 << station);
  }
}

/** Takes an athlete who starts at a station out of all queues. */
export function leaveQueues(state: DayState, athlete: number, station: number): void {
  takeFrom(state.queue[station], athlete);
  if (state.floor.free !== 0) for (const queue of state.queue) takeFrom(queue, athlete);
  state.left[athlete] = at(state.left, athlete) & ~(1 << station);
}

/** Ends an athlete's test: they rest and wait for the next one, leave, or are done. */
export function finishTest(state: DayState, athlete: number, end: number): void {
  const stays = at(state.staysFor, athlete) - 1;
  state.staysFor[athlete] = stays;
  if (end > state.end) state.end = end;
  if (at(state.left, athlete) === 0 || stays <= 0) return;
  const ready = end + state.floor.hall.rest;
  state.since[athlete] = end;
  state.ready[athlete] = ready;
  joinQueues(state, athlete);
  addMoment(state.moments, ready);
}

/** Returns the bits of the tests that may come next: the first that is left, or all that are free when it is one of them. */
function nextStations(left: number, free: number): number {
  const first = left & -left;
  return (first & free) === 0 ? first : left & free;
}

/** Order in a queue says nothing, so the last one takes the place that is left. */
function takeFrom(queue: number[] | undefined, athlete: number): void {
  const place = queue?.indexOf(athlete) ?? -1;
  if (queue === undefined || place < 0) return;
  const last = queue.pop();
  if (last !== undefined && place < queue.length) queue[place] = last;
}
