import type { DayState } from "./day-state.ts";
import type { Spread } from "./hall.ts";
import { at } from "./numbers.ts";

/** Returns how long an athlete's turn at a station takes on this day, in seconds. */
export function turnOf({ floor, draws }: DayState, athlete: number, station: number): number {
  const spread = floor.hall.stations[station]?.turn;
  return timeOf(spread, at(draws.turn, athlete * floor.stations + station), at(draws.pace, station));
}

/** Returns how long the change-over before a turn or a heat takes that somebody leads. */
export function changeOverOf({ floor, draws }: DayState, lead: number, station: number): number {
  const spread = floor.hall.stations[station]?.changeOver;
  return timeOf(spread, at(draws.changeOver, lead * floor.stations + station), at(draws.pace, station));
}

function timeOf(spread: Spread | undefined, by: number, pace: number): number {
  if (spread === undefined) return 0;
  return spread.sigma === 0 ? spread.median * pace : spread.median * pace * Math.exp(spread.sigma * by);
}
