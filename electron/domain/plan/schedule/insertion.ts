import type { Decoder } from "./decode.ts";

/** Puts jobs into orders where they are best, and counts what that costs. */
export interface Insertion {
  /** Returns what the first `count` of an order come to: the end, and by very little the sum of all ends. */
  readonly worth: (order: Int32Array, count: number) => number;
  /** Puts a job into the first `count` of an order, which has room for it; returns what that comes to. */
  readonly insert: (order: Int32Array, count: number, job: number) => number;
  /** Returns the order that comes of putting in one job after another. */
  readonly insertAll: (jobs: Int32Array) => Int32Array;
  /** Orders worked out so far. */
  readonly tried: () => number;
}

/** What a second of all ends together weighs, of a second of the day's end: it only ever tells equal ends apart. */
const small = 1e-7;

/** @param most jobs that an order may have */
export function insertionOf(most: number, decoder: Decoder, random: () => number): Insertion {
  const trial = new Int32Array(most);
  let tried = 0;

  function worth(order: Int32Array, count: number): number {
    tried += 1;
    const outcome = decoder.run(order, count);
    return (outcome[0] as number) + small * (outcome[1] as number);
  }

  function insert(order: Int32Array, count: number, job: number): number {
    let [best, place, ties] = [Number.POSITIVE_INFINITY, 0, 0];
    for (let at = 0; at < count; at += 1) trial[at + 1] = order[at] as number;
    for (let at = 0; at <= count; at += 1) {
      trial[at] = job;
      const value = worth(trial, count + 1);
      if (value < best) [best, place, ties] = [value, at, 1];
      else if (value === best) {
        ties += 1;
        if (random() * ties < 1) place = at;
      }
      // The job moves one on, and the one behind it before it.
      if (at < count) trial[at] = order[at] as number;
    }
    order.copyWithin(place + 1, place, count);
    order[place] = job;
    return best;
  }

  return {
    worth,
    insert,
    insertAll: (jobs) => {
      const order = new Int32Array(jobs.length);
      jobs.forEach((job, count) => {
        insert(order, count, job);
      });
      return order;
    },
    tried: () => tried,
  };
}
