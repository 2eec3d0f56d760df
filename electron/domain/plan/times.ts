import type { DayState } from "./day-state.ts";
import type { Spread } from "./hall.ts";
import { at } from "./numbers.ts";

/** Returns how long an athlete's turn at a station takes on this day, in seconds. */
export function turnOf({ floor, draws }: DayState, athlete: number, station: number): number {
  const spread = floor.hall.stations[station]?.turn;
  return timeOf(spread, at(draws.turn, athlete * floor.stations + station), at(draws.pace, station));
}

/** Returns how long the change-over after somebody's turn takes; the middle one where nobody knows after whom. */
export function changeOverOf({ floor, draws }: DayState, station: number, lead: number | null): number {
  const spread = floor.hall.stations[station]?.changeOver;
  const by = lead === null ? 0 : at(draws.changeOver, lead * floor.stations + station);
  return timeOf(spread, by, at(draws.pace, station));
}

function timeOf(spread: Spread | undefined, by: number, pace: number): number {
  if (spread === undefined) return 0;
  return spread.sigma === 0 ? spread.median * pace : spread.median * pace * Math.exp(spread.sigma * by);
}
