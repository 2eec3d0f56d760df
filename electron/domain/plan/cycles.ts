import type { Break, DoneTurn, Hall, Station } from "./hall.ts";

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
}

/** Ends at one place that are less apart than this were keyed after one heat: nobody's turn is so short. Ours, no source. */
const together = 25;

/**
 * Reads from the ends of turns how long a place is taken by one turn. Of keyed tests only ends are known: with so many
 * places as work side by side, a turn could begin when the one as many ends before it was over, and not before all its
 * athletes were rested. What lies before that is idle and no station's fault (left out as censored). Heats tell who
 * was in them; of keyed ones, ends close together are taken for one. Turns of which nobody knows since when their athletes
 * were there tell nothing and are left out.
 */
export function cyclesOf(record: DayRecord): Cycle[] {
  const batches = record.hall.stations.flatMap((station, index) => batchesOf(record.done, station, index));
  batches.sort((a, b) => a.until - b.until);
  const { judges } = record.hall;
  const readied = readiedIn(record);
  return batches.flatMap((batch, index) => {
    const places = record.hall.stations[batch.station]?.places ?? 1;
    const here = batches.slice(0, index).filter(({ station }) => station === batch.station);
    const place = here.at(-places)?.until ?? Number.NEGATIVE_INFINITY;
    const judge = judges === null ? undefined : batches.slice(0, index).at(-judges)?.until;
    const from = Math.max(place, judge ?? Number.NEGATIVE_INFINITY, readied(batch));
    const took = batch.until - from - pausedIn(record.hall.breaks, from, batch.until);
    return Number.isFinite(took) && took > 0 ? [{ ...batch, took }] : [];
  });
}

function batchesOf(done: readonly DoneTurn[], { test, lanes }: Station, station: number): Batch[] {
  const batches: { station: number; athletes: number[]; heat: string | null; until: number }[] = [];
  for (const { athlete, until, heat } of done.filter((turn) => turn.test === test)) {
    const same = batches.findLast((batch) =>
      heat === null
        ? batch.heat === null && batch.athletes.length < lanes && until - batch.until < together
        : batch.heat === heat,
    );
    if (same === undefined) batches.push({ station, athletes: [athlete], heat, until });
    else {
      same.athletes.push(athlete);
      same.until = Math.max(same.until, until);
    }
  }
  return batches;
}

/** Returns how to tell since when all of a batch could have started; infinity, which tells nothing, where one is unknown. */
function readiedIn({ hall, done, arrived }: DayRecord): (batch: Batch) => number {
  const ends = Map.groupBy(done, ({ athlete }) => athlete);
  return ({ athletes, station, until }) => {
    const test = hall.stations[station]?.test;
    const since = athletes.map((athlete) => {
      const before = (ends.get(athlete) ?? []).filter((turn) => turn.test !== test && turn.until < until);
      const last = before.reduce((latest, turn) => Math.max(latest, turn.until), Number.NEGATIVE_INFINITY);
      return before.length > 0 ? last + hall.rest : (arrived.get(athlete) ?? Number.POSITIVE_INFINITY);
    });
    return Math.max(...since);
  };
}

function pausedIn(breaks: readonly Break[], from: number, until: number): number {
  return breaks.reduce(
    (sum, pause) => sum + Math.max(0, Math.min(until, pause.until) - Math.max(from, pause.from)),
    0,
  );
}
