import { meanCycle } from "../expected.ts";
import type { Athlete, Break, Hall, Station } from "../hall.ts";
import type { Shop } from "./shop.ts";

/** Returns a hall as a shop, with everybody there in the middle of their window and times as they are on average. */
export function shopOf(hall: Hall, athletes: readonly Athlete[]): Shop {
  const { stations } = hall;
  return {
    jobs: athletes.length,
    stages: stations.length,
    places: Int32Array.from(stations, ({ places }) => places),
    lanes: Int32Array.from(stations, ({ lanes }) => lanes),
    // Whoever is called goes there first, so that the change-over is a part of their turn.
    changeOver: new Float64Array(stations.length),
    times: Float64Array.from(
      athletes.flatMap((athlete) => stations.map((station) => timeOf(athlete, station))),
    ),
    rest: hall.rest,
    release: Float64Array.from(athletes, releaseOf),
    breaks: Float64Array.from(inTurn(hall.breaks).flatMap(({ from, until }) => [from, until])),
    judges: hall.judges ?? 0,
  };
}

/** Everybody of a heat is taken to last as long as its slowest, since its place does. */
function timeOf({ left }: Athlete, station: Station): number {
  if (!left.includes(station.test)) return -1;
  return meanCycle(station, station.lanes);
}

function releaseOf({ arrives, rested }: Athlete): number {
  return Math.max(0, (arrives.from + arrives.until) / 2, rested);
}

/** Returns breaks by their beginning, those that touch as one. */
function inTurn(breaks: readonly Break[]): Break[] {
  const merged: Break[] = [];
  for (const each of breaks.filter(({ from, until }) => until > from).sort((a, b) => a.from - b.from)) {
    const last = merged.at(-1);
    if (last === undefined || each.from > last.until) merged.push(each);
    else merged[merged.length - 1] = { from: last.from, until: Math.max(last.until, each.until) };
  }
  return merged;
}
