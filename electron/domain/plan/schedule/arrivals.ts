import type { Athlete, Break, Hall } from "../hall.ts";
import { latestStarts } from "./latest.ts";
import { type Group, leagueOrder } from "./league-order.ts";
import { shopOf } from "./of-hall.ts";
import type { Shop } from "./shop.ts";

/** The athletes of a day, with when each is to be there. */
export type Arrivals = readonly Athlete[];

/** Those who start within so many seconds after the first of their wave are asked to come with it. */
const waveLength = 600;
/** Waves are told in steps of so many seconds, and somebody who is told a time comes within as many after it. */
const step = 300;
/**
 * How far from the first moment at which each could start to the last one, and how many seconds before that waves are to be
 * there, so that no station stands when something goes faster than planned.
 */
const ways: readonly (readonly [shift: number, leads: readonly number[]])[] = [
  [0, [0, 600, 1200]],
  [0.5, [600, 1200, 1800, 2400]],
  [1, [600, 1200, 1800, 2400, 3000, 3600, 4800]],
];

/**
 * Returns ways for leagues to arrive, each within the time in which it can be there: in the order that ends the day early,
 * from all as soon as they could start to all as late as they may.
 */
export function arrivalsOf(
  hall: Hall,
  athletes: readonly Athlete[],
  possible: ReadonlyMap<string, Break>,
): Arrivals[] {
  const windowOf = ({ league, arrives }: Athlete) => possible.get(league) ?? arrives;
  const shop: Shop = {
    ...shopOf(hall, athletes),
    release: Float64Array.from(athletes, (each) => Math.max(0, windowOf(each).from, each.rested)),
  };
  const groups = groupsOf(athletes, shop);
  const { groups: order, schedule } = leagueOrder(shop, groups);
  const [first, latest] = [schedule.starts, latestStarts(shop, schedule)];
  const ordered = order.map((group) => groups[group] ?? []);
  return ways.flatMap(([shift, leads]) =>
    leads.map((lead) => {
      const starts = athletes.map((_, job) => {
        const [one, other] = [firstOf(first, job, shop), firstOf(latest, job, shop)];
        return one + shift * Math.max(0, other - one) - lead;
      });
      return inWaves(athletes, ordered, starts, windowOf);
    }),
  );
}

/** Gathers each league: all of it are to be there when its first wave is. */
export function leaguesTogether(athletes: Arrivals): Arrivals {
  const first = new Map<string, number>();
  for (const { league, arrives } of athletes) {
    first.set(league, Math.min(first.get(league) ?? arrives.from, arrives.from));
  }
  return athletes.map((athlete) => {
    const at = first.get(athlete.league) ?? athlete.arrives.from;
    return { ...athlete, arrives: { from: at, until: at } };
  });
}

/** Leagues as they are listed; in each, whoever has most to do comes first. */
function groupsOf(athletes: readonly Athlete[], shop: Shop): Group[] {
  const jobs = Map.groupBy(athletes.keys(), (job) => athletes[job]?.league ?? "");
  const work = (job: number) =>
    shop.times
      .subarray(job * shop.stages, (job + 1) * shop.stages)
      .reduce((sum, time) => sum + Math.max(0, time), 0);
  return [...jobs.values()].map((some) => some.toSorted((a, b) => work(b) - work(a) || a - b));
}

function firstOf(starts: Float64Array, job: number, { stages }: Shop): number {
  return starts.subarray(job * stages, (job + 1) * stages).find((start) => start >= 0) ?? 0;
}

/**
 * Gathers each league's athletes in waves and gives each the time to be there. No league begins before the one ahead of it
 * is there, unless its window says so.
 */
function inWaves(
  athletes: readonly Athlete[],
  groups: readonly Group[],
  starts: readonly number[],
  windowOf: (athlete: Athlete) => Break,
): Arrivals {
  const arrives = new Map<number, Break>();
  let ahead = Number.NEGATIVE_INFINITY;
  for (const group of groups) {
    let wave = Number.NEGATIVE_INFINITY;
    for (const job of group.toSorted((a, b) => (starts[a] ?? 0) - (starts[b] ?? 0))) {
      const start = Math.max(starts[job] ?? 0, ahead);
      if (start >= wave + waveLength) wave = start;
      const athlete = athletes[job];
      if (athlete !== undefined) arrives.set(job, near(wave, windowOf(athlete)));
    }
    ahead = wave;
  }
  return athletes.map((athlete, job) => ({ ...athlete, arrives: arrives.get(job) ?? athlete.arrives }));
}

/** Returns the moment to be told for a wave: the full step before it, within the time in which the league can be there. */
function near(wave: number, { from, until }: Break): Break {
  const at = Math.max(from, Math.min(Math.floor(wave / step) * step, until));
  return { from: at, until: Math.max(at, Math.min(at + step, until)) };
}
