import type { Shop } from "./shop.ts";

/**
 * Returns a time before which no order can end the day: the most of what each athlete takes alone, what each station takes
 * with all places in use from its first athlete to its last, and what the judges take. Source: the bound by stages that is
 * usual for hybrid flow shops (Santos, Hunsucker & Deal 1995, European Journal of Operational Research 80(1); from memory).
 */
export function boundOf(shop: Shop): number {
  const { jobs, stages } = shop;
  const alone = Array.from({ length: jobs }, (_, job) => headOf(shop, job, stages));
  const bounds = Array.from({ length: stages }, (_, stage) => boundOfStage(shop, stage));
  return Math.max(0, ...alone, ...bounds, boundOfJudges(shop));
}

/** Returns the earliest moment at which a job can be at a stage; at their number: when it is done, 0 without a test. */
function headOf({ stages, times, release, rest }: Shop, job: number, stage: number): number {
  let [at, tests] = [release[job] ?? 0, 0];
  for (let before = 0; before < stage; before += 1) {
    const time = times[job * stages + before] ?? -1;
    if (time < 0) continue;
    at += time + (tests > 0 ? rest : 0);
    tests += 1;
  }
  if (stage < stages) return at + (tests > 0 ? rest : 0);
  return tests > 0 ? at : 0;
}

/** Returns the least time from a job's end at a stage until it is done. */
function tailOf({ stages, times, rest }: Shop, job: number, stage: number): number {
  let tail = 0;
  for (let after = stage + 1; after < stages; after += 1) {
    const time = times[job * stages + after] ?? -1;
    if (time >= 0) tail += time + rest;
  }
  return tail;
}

function boundOfStage(shop: Shop, stage: number): number {
  const there = jobsAt(shop, stage);
  if (there.length === 0) return 0;
  const heats = Math.ceil(there.length / (shop.lanes[stage] ?? 1));
  // As many places as there are heats, at most: each has a first and a last.
  const used = Math.min(shop.places[stage] ?? 1, heats);
  const least = (values: number[]) =>
    values
      .sort((a, b) => a - b)
      .slice(0, used)
      .reduce((sum, each) => sum + each, 0);
  const heads = least(there.map((job) => headOf(shop, job, stage)));
  const tails = least(there.map((job) => tailOf(shop, job, stage)));
  // After the last heat of a place nobody waits for the change-over.
  const last = used * (shop.changeOver[stage] ?? 0);
  return (heads + workOf(shop, stage) - last + tails) / used;
}

function jobsAt({ jobs, stages, times }: Shop, stage: number): number[] {
  return Array.from({ length: jobs }, (_, job) => job).filter(
    (job) => (times[job * stages + stage] ?? -1) >= 0,
  );
}

/** Returns the least that a stage's heats take together: the slowest share heats, then the next. */
function workOf(shop: Shop, stage: number): number {
  const { stages, times } = shop;
  const slowestFirst = jobsAt(shop, stage)
    .map((job) => times[job * stages + stage] ?? 0)
    .sort((a, b) => b - a);
  return slowestFirst
    .filter((_, at) => at % (shop.lanes[stage] ?? 1) === 0)
    .reduce((sum, time) => sum + time + (shop.changeOver[stage] ?? 0), 0);
}

function boundOfJudges(shop: Shop): number {
  const { judges, stages } = shop;
  if (judges === 0) return 0;
  const all = Array.from({ length: stages }, (_, stage) => workOf(shop, stage));
  const longestChange = Math.max(0, ...shop.changeOver);
  return all.reduce((sum, work) => sum + work, 0) / judges - longestChange;
}
