import type { DayState } from "./day-state.ts";
import type { Hall } from "./hall.ts";
import { at } from "./numbers.ts";
import type { StationLoad } from "./told.ts";

/** Seconds of one step of a station's load. */
const step = 300;

/** What has been added up of a station over simulated days: by step, seconds of places in use and of athletes waiting. */
interface Sums {
  readonly station: Hall["stations"][number];
  readonly used: number[];
  readonly waiting: number[];
}

/** Returns sums of no day yet. */
export function emptyLoads({ stations }: Hall): readonly Sums[] {
  return stations.map((station) => ({ station, used: [], waiting: [] }));
}

/** Adds a simulated day to the sums. */
export function takeIn(sums: readonly Sums[], state: DayState): void {
  sums.forEach(({ used, waiting }, station) => {
    for (const { from, until } of heatsAt(state, station)) addTime(used, from, until);
    for (let row = station; row < state.starts.length; row += state.floor.stations) {
      const [ready, start] = [at(state.readied, row), at(state.starts, row)];
      if (start > ready) addTime(waiting, ready, start);
    }
  });
}

/** Returns when a station's places were in use: heats from their start to the end of their slowest. */
function heatsAt(state: DayState, station: number): { from: number; until: number }[] {
  const heats = new Map<number, { from: number; until: number }[]>();
  for (let row = station; row < state.starts.length; row += state.floor.stations) {
    const [from, until] = [at(state.starts, row), at(state.ends, row)];
    if (Number.isNaN(from)) continue;
    const here = heats.get(at(state.places, row)) ?? [];
    heats.set(at(state.places, row), here);
    const same = here.find((heat) => heat.from === from);
    if (same === undefined) here.push({ from, until });
    else same.until = Math.max(same.until, until);
  }
  return [...heats.values()].flat();
}

/** Adds the seconds of a time to the steps that it lies in. What lies before the beginning is left out. */
function addTime(sums: number[], from: number, until: number): void {
  for (let index = Math.max(0, Math.floor(from / step)); index * step < until; index += 1) {
    while (sums.length <= index) sums.push(0);
    const inStep = Math.min(until, (index + 1) * step) - Math.max(from, index * step);
    sums[index] = (sums[index] ?? 0) + Math.max(0, inStep);
  }
}

/** Returns the means over so many days, all stations with the same number of steps. */
export function loadsOf(sums: readonly Sums[], days: number): StationLoad[] {
  const steps = Math.max(0, ...sums.map(({ used, waiting }) => Math.max(used.length, waiting.length)));
  const indexes = Array.from({ length: steps }, (_none, index) => index);
  return sums.map(({ station, used, waiting }) => ({
    ...{ test: station.test, step },
    used: indexes.map((index) => (used[index] ?? 0) / (days * step * station.places)),
    waiting: indexes.map((index) => (waiting[index] ?? 0) / (days * step)),
  }));
}
