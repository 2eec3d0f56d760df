import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../electron/domain/chance.ts";
import { boundOf } from "../../electron/domain/plan/schedule/bound.ts";
import { breachOf } from "../../electron/domain/plan/schedule/fits.ts";
import { searchCallings } from "../../electron/domain/plan/schedule/planned.ts";
import type { Shop } from "../../electron/domain/plan/schedule/shop.ts";
import { shops } from "./plan-shops.ts";

/**
 * Tiny halls with all that a hall has but judges, against every way to run them: at each station every partition of its athletes
 * into heats, in every order, each heat as early as it can be. Worked out here, apart from the scheduler.
 */

/** Every way to put some jobs into heats of so many lanes, one heat after another. */
function* heatsOf(jobs: readonly number[], lanes: number): Generator<number[][]> {
  if (jobs.length === 0) yield [];
  for (let some = 1; some < 2 ** jobs.length; some += 1) {
    const heat = jobs.filter((_, at) => some & (2 ** at));
    if (heat.length > lanes) continue;
    for (const rest of heatsOf(
      jobs.filter((job) => !heat.includes(job)),
      lanes,
    ))
      yield [heat, ...rest];
  }
}

function pastBreaks(shop: Shop, time: number): number {
  const inside = [...shop.breaks.keys()].find(
    (at) => at % 2 === 0 && time >= (shop.breaks[at] ?? 0) && time < (shop.breaks[at + 1] ?? 0),
  );
  return inside === undefined ? time : pastBreaks(shop, shop.breaks[inside + 1] ?? 0);
}

/** The least time in which stages from one on can be done, when each job is rested then. */
function bestFrom(shop: Shop, stage: number, ready: readonly number[], done: number): number {
  if (stage === shop.stages) return done;
  const timeOf = (job: number) => shop.times[job * shop.stages + stage] ?? -1;
  const there = [...ready.keys()].filter((job) => timeOf(job) >= 0);
  let best = Number.POSITIVE_INFINITY;
  for (const heats of heatsOf(there, shop.lanes[stage] ?? 1)) {
    const free = Array.from({ length: shop.places[stage] ?? 1 }, () => 0);
    const next = [...ready];
    let until = done;
    for (const heat of heats) {
      const place = free.indexOf(Math.min(...free));
      const start = pastBreaks(shop, Math.max(free[place] ?? 0, ...heat.map((job) => ready[job] ?? 0)));
      const end = start + Math.max(...heat.map(timeOf));
      free[place] = end + (shop.changeOver[stage] ?? 0);
      for (const job of heat) next[job] = start + timeOf(job) + shop.rest;
      until = Math.max(until, end);
    }
    if (until < best) best = Math.min(best, bestFrom(shop, stage + 1, next, until));
  }
  return best;
}

const tiny = fc.oneof(
  shops({ jobs: 4, stages: 2, places: 2, lanes: 3 }),
  shops({ jobs: 3, stages: 3, places: 2, lanes: 2 }),
);

/**
 * The scheduler never lets a place stand while somebody rested waits for it with the heat full, since no organiser would; an
 * optimum now and then does, for somebody who comes in a moment. That is all it misses.
 */
test("no tiny hall ends before the best of all ways to run it; 19 of 20 end then, and all on average 1 % later", () => {
  const later: number[] = [];
  fc.assert(
    fc.property(tiny, (some) => {
      const shop = { ...some, judges: 0 };
      const best = bestFrom(shop, 0, [...shop.release], 0);
      const found = [...searchCallings(shop, seededChance([1, 2, 3, 4]), 300, true)].at(-1);
      if (found === undefined) throw new Error("Nothing was found.");
      const schedule = found.schedule();
      expect(schedule.end).toBe(found.end);
      expect(breachOf(shop, schedule)).toBeNull();
      expect(schedule.end).toBeGreaterThanOrEqual(best - 1e-6);
      expect(best).toBeGreaterThanOrEqual(boundOf(shop) - 1e-6);
      later.push(best === 0 ? 0 : schedule.end / best - 1);
    }),
    { numRuns: 300, seed: 1 },
  );
  const exact = later.filter((gap) => gap < 1e-9).length;
  expect(exact / later.length).toBeGreaterThanOrEqual(0.95);
  expect(later.reduce((sum, gap) => sum + gap, 0) / later.length).toBeLessThan(0.01);
});
