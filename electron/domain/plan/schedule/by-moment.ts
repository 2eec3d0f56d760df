import { type Bench, type Calling, earliest, startHeat } from "./bench.ts";
import { afterBreaks, type Shop } from "./shop.ts";

/** Where nobody comes any more, or nobody is known to. */
const never = Number.POSITIVE_INFINITY;

/** When a stage could start its next heat, at which place. */
interface Chance {
  at: number;
  place: number;
}

/**
 * Works out an order from one start to the next in the whole hall, as judges who are fewer than places ask for. Of stations
 * that could start at the same moment, that with the most work left for each of its places gets the judge.
 */
export function momentByMoment(
  shop: Shop,
  { byOrder, patience }: Calling,
  bench: Bench,
): (order: Int32Array, count: number) => void {
  const { stages, jobs, times, places, lanes, breaks } = shop;
  const { ready, rank, waiting } = bench;
  const judges = new Float64Array(
    shop.judges > 0 ? shop.judges : places.reduce((sum, each) => sum + each, 0),
  );
  const free = Array.from(places, (count) => new Float64Array(count));
  const at = new Int32Array(jobs);
  const work = new Float64Array(stages);
  const best: Chance & { stage: number } = { stage: 0, at: 0, place: 0 };
  let list: Int32Array = new Int32Array(0);
  let count = 0;
  let waits = 0;

  /** Moves a job on to its next test. */
  function moveOn(job: number): void {
    let stage = at[job] as number;
    while (stage < stages && (times[job * stages + stage] as number) < 0) stage += 1;
    at[job] = stage;
  }

  function begin(): void {
    judges.fill(0);
    for (const each of free) each.fill(0);
    work.fill(0);
    for (let which = 0; which < count; which += 1) {
      const job = list[which] as number;
      at[job] = 0;
      moveOn(job);
      for (let stage = 0; stage < stages; stage += 1) addWork(stage, job, 1);
    }
  }

  function addWork(stage: number, job: number, sign: number): void {
    const time = times[job * stages + stage] as number;
    if (time >= 0) work[stage] = (work[stage] as number) + sign * (time / workers(stage));
  }

  function workers(stage: number): number {
    return (places[stage] as number) * (lanes[stage] as number);
  }

  /** Returns when the first after `from` is rested for a stage, and counts those who are by then. */
  function nextAfter(stage: number, from: number): number {
    let first = never;
    waits = 0;
    for (let which = 0; which < count; which += 1) {
      const job = list[which] as number;
      if (at[job] !== stage) continue;
      const since = ready[job] as number;
      if (since <= from) waits += 1;
      else if (since < first) first = since;
    }
    return first;
  }

  /** Returns when a stage could start its next heat; infinity where nobody is known to come. */
  function startOf(stage: number, from: number): number {
    let start = from;
    let next = nextAfter(stage, start);
    if (waits === 0) start = next;
    if (start === never) return start;
    start = afterBreaks(breaks, start);
    next = nextAfter(stage, start);
    while (waits < (lanes[stage] as number) && next < never && next <= start + (patience[stage] as number)) {
      start = next;
      next = nextAfter(stage, start);
    }
    return afterBreaks(breaks, start);
  }

  /** Finds the start that comes first. Returns whether there is any. */
  function choose(judgeFree: number): boolean {
    const since = Math.max(judgeFree, best.at);
    best.at = never;
    for (let stage = 0; stage < stages; stage += 1) {
      const own = free[stage] as Float64Array;
      const place = earliest(own, own.length);
      const start = startOf(stage, Math.max(own[place] as number, since));
      const more = start === best.at && (work[stage] as number) > (work[best.stage] as number);
      if (start < best.at || more) [best.stage, best.at, best.place] = [stage, start, place];
    }
    return best.at < never;
  }

  function isBefore(job: number, other: number, ranked: boolean): boolean {
    const [one, another] = [ready[job] as number, ready[other] as number];
    if (!ranked && one !== another) return one < another;
    return (rank[job] as number) < (rank[other] as number);
  }

  /** Puts those who are rested for a stage in a line. */
  function lineUp(stage: number, until: number): void {
    waits = 0;
    for (let which = 0; which < count; which += 1) {
      const job = list[which] as number;
      if (at[job] !== stage || (ready[job] as number) > until) continue;
      let to = waits;
      for (; to > 0 && isBefore(job, waiting[to - 1] as number, byOrder || stage === 0); to -= 1)
        waiting[to] = waiting[to - 1] as number;
      waiting[to] = job;
      waits += 1;
    }
  }

  function start(judge: number): void {
    const { stage, place } = best;
    lineUp(stage, best.at);
    const size = Math.min(waits, lanes[stage] as number);
    for (let lane = 0; lane < size; lane += 1) {
      const job = waiting[lane] as number;
      at[job] = stage + 1;
      moveOn(job);
      addWork(stage, job, -1);
    }
    const done = startHeat(shop, bench, best.at, stage, place, size, waits);
    const until = done + (shop.changeOver[stage] as number);
    (free[stage] as Float64Array)[place] = until;
    judges[judge] = until;
  }

  return (order, jobsOfIt) => {
    list = order;
    count = jobsOfIt;
    best.at = 0;
    begin();
    for (;;) {
      const judge = earliest(judges, judges.length);
      if (!choose(judges[judge] as number)) return;
      start(judge);
    }
  };
}
