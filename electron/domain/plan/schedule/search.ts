import type { Calling } from "./bench.ts";
import { type Decoder, decoderOf } from "./decode.ts";
import { type Insertion, insertionOf } from "./insertion.ts";
import { listOrders, longestFirst } from "./rules.ts";
import type { Schedule, Shop } from "./shop.ts";

/** How far a search is. It says so after each step; whoever asked may stop it there and take the best so far. */
export interface Found {
  /** Orders worked out so far. */
  readonly evaluations: number;
  /** When the last athlete is done, in the best order so far. */
  readonly end: number;
  /** Returns the best order so far: who is to be called first, second and so on, by the number of the job. */
  readonly order: () => Int32Array;
  /** Returns the day by that order, turn by turn. */
  readonly schedule: () => Schedule;
}

/** What a search may do. */
export interface Searching {
  readonly calling: Calling;
  /** Uniform numbers in [0, 1), which repeat with their seed. */
  readonly random: () => number;
  /** It ends after so many orders that it worked out. */
  readonly evaluations: number;
  /** It ends when the day ends by then: nobody could do better. */
  readonly bound: number;
  /** An order to begin with, beside the list rules. */
  readonly from?: Int32Array;
}

/** Athletes that a step takes out of the order and puts back where they are best. */
const takenOut = 3;
/**
 * How readily a step to a worse order is taken: the temperature is this part of a tenth of the mean time. Source of the
 * method and of 0.4: Ruiz & Stützle 2007, European Journal of Operational Research 177(3) (from memory).
 */
const heat = 0.4;

/**
 * Searches for an order in which the day ends early, and of equal ones for that with the shortest waits: list rules, the
 * insertion rule of Nawaz, Enscore & Ham 1983 (Omega 11(1)), then an iterated greedy search.
 */
export function* search(
  shop: Shop,
  { calling, random, evaluations, bound, from }: Searching,
): Generator<Found> {
  const decoder = decoderOf(shop, calling);
  const insertion = insertionOf(shop.jobs, decoder, random);
  const best = startOf(shop, decoder, insertion, from);
  const found = (): Found => ({
    evaluations: insertion.tried(),
    end: best.end,
    order: () => best.order.slice(),
    schedule: () => {
      decoder.run(best.order, shop.jobs);
      return decoder.schedule();
    },
  });
  yield found();
  let here = { ...best };
  const temperature = (heat * meanTime(shop)) / 10;
  while (shop.jobs > 1 && insertion.tried() < evaluations && best.end > bound) {
    const order = here.order.slice();
    const value = step(order, insertion, random);
    if (value < best.value) {
      Object.assign(best, { value, order: order.slice(), end: decoder.run(order, shop.jobs)[0] as number });
    }
    if (value <= here.value || random() < Math.exp((here.value - value) / temperature))
      here = { ...best, order, value };
    yield found();
  }
}

interface Kept {
  order: Int32Array;
  value: number;
  end: number;
}

/** The best of the list rules and of the insertion rule. */
function startOf(shop: Shop, decoder: Decoder, insertion: Insertion, from?: Int32Array): Kept {
  const inserted = insertion.insertAll(longestFirst(shop));
  const [best] = [...(from === undefined ? [] : [from]), ...listOrders(shop), inserted]
    .map((order) => ({ order, value: insertion.worth(order, shop.jobs) }))
    .sort((a, b) => a.value - b.value);
  const order = best?.order ?? inserted;
  return { order, value: best?.value ?? 0, end: decoder.run(order, shop.jobs)[0] as number };
}

/** Takes a few out of the order at random and puts them back, each where it is best. Returns what that comes to. */
function step(order: Int32Array, insertion: Insertion, random: () => number): number {
  const out: number[] = [];
  let count = order.length;
  for (let taken = 0; taken < Math.min(takenOut, order.length - 1); taken += 1) {
    const at = Math.floor(random() * count);
    out.push(order[at] as number);
    order.copyWithin(at, at + 1, count);
    count -= 1;
  }
  let value = 0;
  for (const job of out) {
    value = insertion.insert(order, count, job);
    count += 1;
  }
  return value;
}

function meanTime({ times }: Shop): number {
  const some = times.filter((time) => time >= 0);
  return some.length === 0 ? 0 : some.reduce((sum, time) => sum + time, 0) / some.length;
}
