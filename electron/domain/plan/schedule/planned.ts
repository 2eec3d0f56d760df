import type { Calling } from "./bench.ts";
import { decoderOf } from "./decode.ts";
import { type Found, search } from "./search.ts";
import type { Shop } from "./shop.ts";

/** For how many seconds heats with free lanes may wait for each next athlete. */
const patiences = [0, 30, 60, 120, 300, Number.POSITIVE_INFINITY];
/** Orders that each way of calling is tried with before the best of them gets the rest. */
const share = 0.05;

/**
 * Searches for a day that ends early, also by how long heats wait for whoever is rested soon: a heat that starts at once
 * with one athlete may keep five waiting until it is done.
 * @param evaluations orders to try, roughly
 */
export function* searchCallings(
  shop: Shop,
  random: () => number,
  evaluations: number,
  byOrder: boolean,
): Generator<Found> {
  const uniform = uniformCallings(shop, byOrder);
  const each = Math.ceil(evaluations * (uniform.length > 1 ? share : 1));
  let best: Best | undefined;
  let spent = 0;
  for (const calling of uniform) {
    for (const found of search(shop, { random, bound: 0, calling, evaluations: each })) {
      if (best === undefined || found.end < best.found.end) best = { found, calling };
      yield { ...best.found, evaluations: spent + found.evaluations };
    }
    spent += each;
  }
  if (best === undefined || uniform.length === 1) return;
  const calling = refined(shop, best);
  for (const found of search(shop, {
    random,
    bound: 0,
    calling,
    evaluations: evaluations - spent,
    from: best.found.order(),
  }))
    yield { ...(found.end < best.found.end ? found : best.found), evaluations: spent + found.evaluations };
}

interface Best {
  readonly found: Found;
  readonly calling: Calling;
}

function uniformCallings({ stages, lanes }: Shop, byOrder: boolean): Calling[] {
  const some = lanes.some((count) => count > 1) ? patiences : [0];
  return some.map((seconds) => ({ byOrder, patience: new Float64Array(stages).fill(seconds) }));
}

/** Returns a way of calling in which each station waits as long as is best there for the order that was found. */
function refined(shop: Shop, { found, calling }: Best): Calling {
  const patience = calling.patience.slice();
  const order = found.order();
  const endWith = (some: Float64Array) =>
    decoderOf(shop, { ...calling, patience: some }).run(order, shop.jobs)[0] ?? 0;
  for (let stage = 0; stage < shop.stages; stage += 1) {
    if ((shop.lanes[stage] ?? 1) === 1) continue;
    const ends = patiences.map((seconds) => endWith(patience.with(stage, seconds)));
    const least = Math.min(...ends);
    if (least < endWith(patience)) patience[stage] = patiences[ends.indexOf(least)] ?? 0;
  }
  return { ...calling, patience };
}
