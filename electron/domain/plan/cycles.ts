import type { Break, DoneTurn, Hall, Spread, Station } from "./hall.ts";

/** One use of a place: from the moment when it could begin until its last athlete was done. Times in seconds. */
export interface Cycle {
  readonly station: number;
  /** Who was measured together. */
  readonly athletes: readonly number[];
  /** How long it took: the change-over before it and the turn, or the heat, itself. Time without anybody rested is left out. */
  readonly took: number;
  readonly until: number;
}

/** What cycles are read from. */
export interface DayRecord {
  readonly hall: Hall;
  readonly done: readonly DoneTurn[];
  readonly arrived: ReadonlyMap<number, number>;
}

/** Those who ended together. */
interface Batch {
  readonly station: number;
  readonly athletes: readonly number[];
  readonly until: number;
  /** Since when the last of them could have started. */
  readonly readied: number;
  /** When they started; null where nobody knows. */
  readonly from: number | null;
}

/**
 * Reads from the ends of turns how long a place is taken by one turn. Of keyed tests only ends are known: with so many
 * places as work side by side, a turn could begin when the one as many ends before it was over, and not before all its
 * athletes were rested. What lies before that is idle and no station's fault (left out as censored). Heats tell who was in
 * them; of keyed ones, see {@link isSameHeat}. Turns of which nobody knows since when their athletes were there tell
 * nothing and are left out.
 */
export function cyclesOf(record: DayRecord): Cycle[] {
  const readied = readiedIn(record);
  const batches = record.hall.stations.flatMap((_station, index) => batchesOf(record, index, readied));
  batches.sort((a, b) => a.until - b.until);
  return batches.flatMap((batch, index) => {
    const places = record.hall.stations[batch.station]?.places ?? 1;
    const here = batches.slice(0, index).filter(({ station }) => station === batch.station);
    const from = Math.max(here.at(-places)?.until ?? openedFor(batch, record.hall), batch.readied);
    const took = batch.until - from - pausedIn(record.hall.breaks, from, batch.until);
    return Number.isFinite(took) && took > 0 ? [{ ...batch, took }] : [];
  });
}

/**
 * Returns when a place was opened for its first use: a change-over before it where a heat tells its start. Else nobody knows:
 * it may have stood for long with athletes before it, so that such a turn tells nothing.
 */
function openedFor({ station, from }: Batch, { stations }: Hall): number {
  return from === null ? unknown : from - (stations[station]?.changeOver.median ?? 0);
}

type Readied = (athlete: number, station: number, until: number) => number;

function batchesOf({ hall, done }: DayRecord, index: number, readied: Readied): Batch[] {
  const station = hall.stations[index];
  if (station === undefined) return [];
  const batches: Growing[] = [];
  for (const turn of done.filter(({ test }) => test === station.test)) {
    const ready = readied(turn.athlete, index, turn.until);
    const same = batches.findLast((batch) =>
      turn.heat === null ? isSameHeat(batch, turn.until, ready, station) : batch.heat === turn.heat,
    );
    if (same === undefined) {
      batches.push({
        station: index,
        athletes: [turn.athlete],
        heat: turn.heat,
        first: turn.until,
        until: turn.until,
        readied: ready,
        from: turn.from,
      });
    } else {
      same.athletes.push(turn.athlete);
      same.until = Math.max(same.until, turn.until);
      same.readied = Math.max(same.readied, ready);
    }
  }
  return batches;
}

/** A batch while it is read. */
interface Growing extends Batch {
  readonly athletes: number[];
  readonly heat: string | null;
  /** The first of its ends. */
  readonly first: number;
  until: number;
  readied: number;
}

/**
 * Whether somebody whose result was keyed was in the heat that was keyed last: it had a lane left, they were rested before
 * its first one ended, and they ended sooner after its last one than a change-over and a turn take.
 */
function isSameHeat(
  batch: Growing,
  until: number,
  ready: number,
  { lanes, turn, changeOver }: Station,
): boolean {
  if (batch.heat !== null || batch.athletes.length >= lanes) return false;
  const wasThere = !Number.isFinite(ready) || ready < batch.first - turn.median * shortestTurn;
  return wasThere && until - batch.until < shortOf(turn) + changeOver.median;
}

/** Returns about how long the shortest of six turns takes: the mean of the smallest of six normal values is -1.27. */
function shortOf({ median, sigma }: Spread): number {
  return median * Math.exp(-1.27 * sigma);
}

/** Hardly any turn is shorter than this share of a usual one. Ours, no source. */
const shortestTurn = 0.25;

/**
 * Returns how to tell since when somebody could have started; infinity, which tells nothing, where that is unknown: of
 * somebody whose test before was skipped, or went on paper and has no time.
 */
function readiedIn({ hall, done, arrived }: DayRecord): Readied {
  const ends = Map.groupBy(done, ({ athlete }) => athlete);
  return (athlete, station, until) => {
    const test = hall.stations[station]?.test;
    const before = (ends.get(athlete) ?? []).filter((turn) => turn.test !== test && turn.until < until);
    if (before.length === 0) return station === 0 ? (arrived.get(athlete) ?? unknown) : unknown;
    const last = before.reduce((one, other) => (other.until > one.until ? other : one));
    const isNext = hall.middleIsFree || last.test === hall.stations[station - 1]?.test;
    return isNext ? last.until + hall.rest : unknown;
  };
}

const unknown = Number.POSITIVE_INFINITY;

function pausedIn(breaks: readonly Break[], from: number, until: number): number {
  return breaks.reduce(
    (sum, pause) => sum + Math.max(0, Math.min(until, pause.until) - Math.max(from, pause.from)),
    0,
  );
}
