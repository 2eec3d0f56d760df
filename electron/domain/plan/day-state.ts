import type { Draws } from "./draws.ts";
import type { Floor } from "./floor.ts";
import type { Moments } from "./moments.ts";
import { filled } from "./numbers.ts";

/** A simulated day while it runs. Rows of two kinds have a value for each athlete at each station, athletes first. */
export interface DayState {
  readonly floor: Floor;
  readonly draws: Draws;
  readonly moments: Moments;
  /** By athlete: the tests left as bits, since when they wait, when they are rested, and how many tests they stay for. */
  readonly left: Float64Array;
  readonly since: Float64Array;
  readonly ready: Float64Array;
  readonly staysFor: Float64Array;
  /** By station: who waits or rests for it, in no order, and how many they are. */
  readonly queue: readonly number[][];
  /** By station: nobody in its queue is rested before. */
  readonly soonest: Float64Array;
  /** Who is still to arrive, the last first. */
  readonly coming: number[];
  /** By station and place: when the next turn can start there. */
  readonly placeFree: readonly number[][];
  /** By station: the last of those to arrive who begin there, and until when a heat waits for more. */
  readonly lastArrival: Float64Array;
  readonly heldUntil: Float64Array;
  /** By athlete and station; NaN where there was no turn. */
  readonly starts: Float64Array;
  readonly ends: Float64Array;
  /** From when on they could have started. */
  readonly readied: Float64Array;
  readonly places: Float64Array;
  /** When the last athlete so far is done. */
  end: number;
  spareUsed: number;
}

/** Makes the rows of a day on which nothing has happened. */
export function emptyDay(floor: Floor, draws: Draws): DayState {
  const athletes = floor.athletes.length;
  const each = athletes * floor.stations;
  return {
    ...{ floor, draws, moments: { heap: [] } },
    left: floor.left.slice(),
    since: filled(athletes, 0),
    ready: filled(athletes, 0),
    staysFor: filled(athletes, Number.POSITIVE_INFINITY),
    soonest: filled(floor.stations, Number.POSITIVE_INFINITY),
    coming: [],
    queue: floor.hall.stations.map(() => []),
    placeFree: floor.hall.stations.map(({ places }) =>
      new Array<number>(places).fill(Number.NEGATIVE_INFINITY),
    ),
    lastArrival: filled(floor.stations, Number.NEGATIVE_INFINITY),
    heldUntil: filled(floor.stations, Number.NEGATIVE_INFINITY),
    starts: filled(each, Number.NaN),
    ends: filled(each, Number.NaN),
    readied: filled(each, Number.NaN),
    places: filled(each, -1),
    end: 0,
    spareUsed: 0,
  };
}
