import { decoderOf } from "./decode.ts";
import { type Insertion, insertionOf } from "./insertion.ts";
import type { Schedule, Shop } from "./shop.ts";

/** A league's athletes as jobs, in the order in which they are to come. */
export type Group = readonly number[];

/** An order of leagues, and the day that it comes to. */
export interface LeagueOrder {
  /** Places of the groups in the list that was given. */
  readonly groups: readonly number[];
  readonly schedule: Schedule;
}

/**
 * Returns an order of leagues in which the day ends early, each league together: every league is put where it is best,
 * again and again until none is better elsewhere. Later stations take whoever is rested first, as they do in a hall.
 */
export function leagueOrder(shop: Shop, groups: readonly Group[]): LeagueOrder {
  const decoder = decoderOf(shop, { byOrder: false, patience: new Float64Array(shop.stages) });
  const insertion = insertionOf(shop.jobs, decoder, () => 1);
  const worth = (order: readonly number[]) => worthOf(order, groups, insertion);
  let order: number[] = [];
  for (const group of groups.keys()) order = withGroup(order, group, worth);
  for (let last = Number.POSITIVE_INFINITY; worth(order) < last; ) {
    last = worth(order);
    for (const group of groups.keys())
      order = withGroup(
        order.filter((other) => other !== group),
        group,
        worth,
      );
  }
  worth(order);
  return { groups: order, schedule: decoder.schedule() };
}

function worthOf(order: readonly number[], groups: readonly Group[], insertion: Insertion): number {
  const jobs = Int32Array.from(order.flatMap((group) => groups[group] ?? []));
  return insertion.worth(jobs, jobs.length);
}

/** Puts a group where it is best; the last of equal places leaves the order as it was given. */
function withGroup(
  order: readonly number[],
  group: number,
  worth: (order: readonly number[]) => number,
): number[] {
  const tries = Array.from({ length: order.length + 1 }, (_, at) =>
    order.toSpliced(order.length - at, 0, group),
  );
  const worths = tries.map(worth);
  return tries[worths.indexOf(Math.min(...worths))] ?? [...order, group];
}
