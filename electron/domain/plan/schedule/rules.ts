import type { Shop } from "./shop.ts";
import { type TwoTurns, twoStationOrder } from "./two-stations.ts";

/** Returns all of an athlete's times added, without rest. */
function totalOf({ stages, times }: Shop, job: number): number {
  let total = 0;
  for (let stage = 0; stage < stages; stage += 1) total += Math.max(times[job * stages + stage] as number, 0);
  return total;
}

/** Returns the jobs by their total, longest first, and equal ones as they are listed: the order in which NEH puts them in. */
export function longestFirst(shop: Shop): Int32Array {
  const totals = Array.from({ length: shop.jobs }, (_, job) => totalOf(shop, job));
  return Int32Array.from(totals.keys()).sort((a, b) => (totals[b] ?? 0) - (totals[a] ?? 0) || a - b);
}

/**
 * Returns orders to begin with that cost nothing to work out: as listed, by arrival, longest and shortest first, and for
 * each two stations the order that is best for them alone, with all between them as a lag.
 */
export function listOrders(shop: Shop): Int32Array[] {
  const listed = Int32Array.from({ length: shop.jobs }, (_, job) => job);
  const arrival = (job: number) => shop.release[job] ?? 0;
  const longest = longestFirst(shop);
  return [
    listed,
    listed.toSorted((a, b) => arrival(a) - arrival(b) || a - b),
    longest,
    longest.toReversed(),
    ...pairsOfStages(shop).map(([one, other]) => Int32Array.from(twoStationOrder(turnsAt(shop, one, other)))),
  ];
}

function pairsOfStages({ stages }: Shop): [number, number][] {
  const all = Array.from({ length: stages }, (_, stage) => stage);
  return all.flatMap((one) => all.slice(one + 1).map((other): [number, number] => [one, other]));
}

/** The times of one place, as if as many athletes as a station takes at once went through one after another. */
function turnsAt(shop: Shop, one: number, other: number): TwoTurns[] {
  const at = (job: number, stage: number) => Math.max(shop.times[job * shop.stages + stage] ?? 0, 0);
  const shared = (stage: number) => (shop.places[stage] ?? 1) * (shop.lanes[stage] ?? 1);
  return Array.from({ length: shop.jobs }, (_, job) => {
    let between = shop.rest * (other - one);
    for (let stage = one + 1; stage < other; stage += 1) between += at(job, stage);
    return { first: at(job, one) / shared(one), lag: between, second: at(job, other) / shared(other) };
  });
}
