import type { Schedule, Shop } from "./shop.ts";

/** How athletes are called at the stations once an order is given. */
export interface Calling {
  /**
   * True where each station takes whoever comes first in the order, of those who are rested; false where only the first
   * station does, and the later ones take whoever is rested first.
   */
  readonly byOrder: boolean;
  /** By stage: for how many seconds a heat with free lanes waits for each next athlete. */
  readonly patience: Float64Array;
}

/** Memory that a decoder works in, again and again. Numbers that change are in arrays: in objects each would be a new one. */
export interface Bench {
  /** When the last of all is done, and the sum of all ends. */
  readonly outcome: Float64Array;
  /** By job and stage, as in a schedule. */
  readonly starts: Float64Array;
  readonly placeOf: Int32Array;
  /** Place in the order, by job. */
  readonly rank: Int32Array;
  /** When each job can start its next test. */
  readonly ready: Float64Array;
  /** Those who are rested and wait, next first. */
  readonly waiting: Int32Array;
}

/** Returns memory for one shop. */
export function benchOf({ jobs, stages }: Shop): Bench {
  return {
    outcome: new Float64Array(2),
    starts: new Float64Array(jobs * stages),
    placeOf: new Int32Array(jobs * stages),
    rank: new Int32Array(jobs),
    ready: new Float64Array(jobs),
    waiting: new Int32Array(jobs),
  };
}

/** Makes a bench ready for the first `count` jobs of an order. */
export function clear(bench: Bench, { release }: Shop, order: Int32Array, count: number): void {
  bench.outcome.fill(0);
  bench.starts.fill(-1);
  bench.ready.set(release);
  for (let at = 0; at < count; at += 1) bench.rank[order[at] as number] = at;
}

/** Returns what the last order came to, turn by turn, in memory of its own. */
export function scheduleOf({ starts, placeOf, outcome }: Bench): Schedule {
  return { starts: starts.slice(), places: placeOf.slice(), end: outcome[0] as number };
}

/**
 * Lets a heat start with those who wait first, and takes them out of the line.
 * @param waits how many wait
 * @returns when its slowest is done
 */
export function startHeat(
  { stages, rest, times }: Shop,
  { starts, placeOf, ready, waiting, outcome }: Bench,
  at: number,
  stage: number,
  place: number,
  size: number,
  waits: number,
): number {
  let done = at;
  for (let lane = 0; lane < size; lane += 1) {
    const job = waiting[lane] as number;
    const turn = job * stages + stage;
    const end = at + (times[turn] as number);
    starts[turn] = at;
    placeOf[turn] = place;
    ready[job] = end + rest;
    outcome[1] = (outcome[1] as number) + end;
    if (end > done) done = end;
  }
  if (done > (outcome[0] as number)) outcome[0] = done;
  for (let lane = size; lane < waits; lane += 1) waiting[lane - size] = waiting[lane] as number;
  return done;
}

/** Returns which of the first `count` of some times is the earliest; the first of equals. */
export function earliest(times: Float64Array, count: number): number {
  let best = 0;
  for (let at = 1; at < count; at += 1) if ((times[at] as number) < (times[best] as number)) best = at;
  return best;
}
