import { type Bench, type Calling, earliest, startHeat } from "./bench.ts";
import { afterBreaks, type Shop } from "./shop.ts";

/**
 * Works out an order one station after another, which is enough where none takes anything from another: no judges to
 * share. Nothing is allocated while it runs.
 */
export function stageByStage(
  shop: Shop,
  { byOrder, patience }: Calling,
  bench: Bench,
): (order: Int32Array, count: number) => void {
  const { stages, times, breaks } = shop;
  const { ready, rank, waiting } = bench;
  const sequence = new Int32Array(shop.jobs);
  const free = new Float64Array(Math.max(...shop.places, 1));
  let [count, next, waits] = [0, 0, 0];

  /** The order of the stage before is nearly that of this one: hardly anything moves. */
  function sortByReady(): void {
    for (let at = 1; at < count; at += 1) {
      const job = sequence[at] as number;
      const since = ready[job] as number;
      let to = at;
      for (; to > 0; to -= 1) {
        const other = sequence[to - 1] as number;
        const otherSince = ready[other] as number;
        if (otherSince < since) break;
        if (otherSince === since && (rank[other] as number) < (rank[job] as number)) break;
        sequence[to] = other;
      }
      sequence[to] = job;
    }
  }

  /** By the order; where whoever is rested first comes first, they join in that sequence anyway. */
  function join(job: number, ranked: boolean): void {
    let to = waits;
    if (ranked) {
      for (; to > 0; to -= 1) {
        const other = waiting[to - 1] as number;
        if ((rank[other] as number) < (rank[job] as number)) break;
        waiting[to] = other;
      }
    }
    waiting[to] = job;
    waits += 1;
  }

  /** Lets everybody join who is rested by `until`; afterwards the next in the sequence is to come here, later. */
  function joinUntil(stage: number, until: number, ranked: boolean): void {
    for (; next < count; next += 1) {
      const job = sequence[next] as number;
      if ((times[job * stages + stage] as number) < 0) continue;
      if ((ready[job] as number) > until) return;
      join(job, ranked);
    }
  }

  function nextReady(): number {
    return next < count ? (ready[sequence[next] as number] as number) : Number.POSITIVE_INFINITY;
  }

  function pastBreaks(stage: number, from: number, ranked: boolean): number {
    if (breaks.length === 0) return from;
    const at = afterBreaks(breaks, from);
    joinUntil(stage, at, ranked);
    return at;
  }

  /** Returns when a heat starts that has free lanes and waits for whoever is ready soon. */
  function fill(stage: number, from: number, ranked: boolean): number {
    let at = from;
    const lanes = shop.lanes[stage] as number;
    const most = patience[stage] as number;
    while (waits < lanes && next < count && nextReady() <= at + most) {
      at = nextReady();
      joinUntil(stage, at, ranked);
    }
    return pastBreaks(stage, at, ranked);
  }

  function runStage(stage: number): void {
    const places = shop.places[stage] as number;
    const lanes = shop.lanes[stage] as number;
    const changeOver = shop.changeOver[stage] as number;
    const ranked = byOrder || stage === 0;
    free.fill(0);
    next = 0;
    waits = 0;
    for (let at = 0; ; ) {
      const place = earliest(free, places);
      // Those who wait already came by the start before this one, whenever the place was free.
      if ((free[place] as number) > at) at = free[place] as number;
      joinUntil(stage, at, ranked);
      if (waits === 0) {
        if (next === count) return;
        at = nextReady();
        joinUntil(stage, at, ranked);
      }
      at = pastBreaks(stage, at, ranked);
      if (waits < lanes) at = fill(stage, at, ranked);
      const size = Math.min(waits, lanes);
      free[place] = startHeat(shop, bench, at, stage, place, size, waits) + changeOver;
      waits -= size;
    }
  }

  return (order, jobs) => {
    count = jobs;
    for (let at = 0; at < count; at += 1) sequence[at] = order[at] as number;
    for (let stage = 0; stage < stages; stage += 1) {
      sortByReady();
      runStage(stage);
    }
  };
}
