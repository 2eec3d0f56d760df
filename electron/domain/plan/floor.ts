import { type TestCode, testCodes } from "../tests/registry.ts";
import type { Athlete, Hall, Moment, Running } from "./hall.ts";

/** What a day may hold besides what its hall says. Shares and chances are 0 to 1. */
export interface Customs {
  /** Share of those who come that come after their window, and by how many seconds on average. */
  readonly late: number;
  readonly lateBy: number;
  /** Chance to leave after a test with others still to do. */
  readonly leaves: number;
}

/** A day on which everybody who comes is there in their window and stays to the end. */
const strictCustoms: Customs = Object.freeze({ late: 0, lateBy: 0, leaves: 0 });

/** A hall and its athletes as numbers in rows: what a simulated day is run on, and what it never changes. */
export interface Floor {
  readonly hall: Hall;
  readonly customs: Customs;
  readonly athletes: readonly Athlete[];
  /** Number of stations. */
  readonly stations: number;
  /** By athlete: the tests left, one bit for each station; without the one that is under way. */
  readonly left: Float64Array;
  readonly underWay: readonly UnderWay[];
  /** By station: the ends of its last turns, as many as it has places free; the earliest first. */
  readonly lastEnds: readonly (readonly number[])[];
  /** Bits of the stations that may be done in any order. */
  readonly free: number;
  /** True where nobody who was to come before moment 0 can be missing. */
  readonly isAhead: boolean;
}

/** A heat or a turn that runs at the beginning, its athletes and its station by their places in the lists. */
export interface UnderWay {
  readonly station: number;
  readonly athletes: readonly number[];
  readonly since: number;
}

/** Lays a hall out for simulating its day, or the rest of it. */
export function floorOf(moment: Moment, customs = strictCustoms): Floor {
  const { athletes } = moment;
  // Two breaks that meet are gone through in turn.
  const hall = { ...moment.hall, breaks: moment.hall.breaks.toSorted((a, b) => a.from - b.from) };
  const indexes = new Map(athletes.map(({ id }, index) => [id, index]));
  const underWay = moment.running.flatMap((running) => underWayOf(running, hall, indexes));
  return {
    ...{ hall, customs, athletes, underWay, isAhead: moment.isAhead ?? false },
    stations: hall.stations.length,
    left: leftOf(moment, underWay),
    lastEnds: hall.stations.map(({ test, places }, station) => {
      const running = underWay.filter((each) => each.station === station).length;
      return lastEndsOf(moment, test, Math.max(0, places - running));
    }),
    free: hall.middleIsFree ? bitsOf(hall, isMiddle) : 0,
  };
}

/** Returns a moment before anything has begun. */
export function beginning(hall: Hall, athletes: readonly Athlete[]): Moment {
  return { hall, athletes, running: [], done: [], isAhead: true };
}

function underWayOf(running: Running, hall: Hall, indexes: ReadonlyMap<number, number>): UnderWay[] {
  const station = hall.stations.findIndex(({ test }) => test === running.test);
  const athletes = running.athletes.flatMap((id) => indexes.get(id) ?? []);
  return station < 0 || athletes.length === 0 ? [] : [{ station, athletes, since: running.since }];
}

function leftOf({ hall, athletes }: Moment, underWay: readonly UnderWay[]): Float64Array {
  const left = Float64Array.from(athletes, (athlete) => bitsOf(hall, (test) => athlete.left.includes(test)));
  for (const { station, athletes: some } of underWay)
    for (const athlete of some) left[athlete] = (left[athlete] as number) & ~(1 << station);
  return left;
}

function bitsOf(hall: Hall, isOne: (test: TestCode) => boolean): number {
  return hall.stations.reduce((bits, { test }, station) => (isOne(test) ? bits | (1 << station) : bits), 0);
}

function isMiddle(test: TestCode): boolean {
  return test !== testCodes[0] && test !== testCodes.at(-1);
}

/** Returns when the places that are free now became so, as far as today's turns tell; those who ended together count once. */
function lastEndsOf({ done }: Moment, test: TestCode, free: number): number[] {
  const here = done.filter((turn) => turn.test === test);
  const byHeat = new Map(here.map((turn, index) => [turn.heat ?? `${index}`, turn.until]));
  return [...byHeat.values()]
    .sort((a, b) => b - a)
    .slice(0, free)
    .reverse();
}
