import { type DayState, emptyDay } from "./day-state.ts";
import type { Draws } from "./draws.ts";
import type { Floor } from "./floor.ts";
import type { Break } from "./hall.ts";
import { takeMoment } from "./moments.ts";
import { admit, openDay } from "./opening.ts";
import { startAll } from "./starting.ts";

/**
 * Simulates one day, or the rest of one, as this program runs it: whenever a place is free, who has waited longest among
 * the rested is called. Goes from moment to moment at which something can start (discrete-event simulation). Times are
 * seconds from moment 0; the same floor and draws give the same day.
 */
export function simulate(floor: Floor, draws: Draws): DayState {
  const state = emptyDay(floor, draws);
  openDay(state);
  let done = Number.NEGATIVE_INFINITY;
  for (let now = takeMoment(state.moments); Number.isFinite(now); now = takeMoment(state.moments)) {
    if (now === done || isBreak(floor.hall.breaks, now)) continue;
    admit(state, now);
    startAll(state, now);
    done = now;
  }
  return state;
}

function isBreak(breaks: readonly Break[], now: number): boolean {
  return breaks.some(({ from, until }) => now >= from && now < until);
}
