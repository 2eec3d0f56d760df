import fc from "fast-check";
import { expect, test } from "vitest";
import { decoderOf } from "../../electron/domain/plan/schedule/decode.ts";
import { breachOf } from "../../electron/domain/plan/schedule/fits.ts";
import { neverLonger, withMore } from "../../electron/domain/plan/schedule/more.ts";
import type { Shop } from "../../electron/domain/plan/schedule/shop.ts";
import { atOnce, listed, shops } from "./plan-shops.ts";

/**
 * Graham, R. L. (1966), Bounds for certain multiprocessing anomalies, Bell System Technical Journal 45(9), and (1969), Bounds on
 * multiprocessing timing anomalies, SIAM Journal on Applied Mathematics 17(2): nine tasks by a list on three machines take 12;
 * with fewer precedences 16, with tasks that are all shorter by one 13, with a fourth machine 15. Figures and example from memory;
 * worked out again by `endByList`.
 */
interface Tasks {
  readonly times: readonly number[];
  /** What must be done before each. */
  readonly before: readonly (readonly number[])[];
  readonly machines: number;
}

const graham: Tasks = {
  times: [3, 2, 2, 2, 4, 4, 4, 4, 9],
  before: [[], [], [], [], [3], [3], [3], [3], [0]],
  machines: 3,
};

/** When the last task is done if each machine that is free takes the first of the list that may start. */
function endByList({ times, before, machines }: Tasks): number {
  const ends = new Map<number, number>();
  const free = Array.from({ length: machines }, () => 0);
  for (let now = 0; ends.size < times.length; now += 1) {
    for (const [task, time] of times.entries()) {
      const machine = free.findIndex((until) => until <= now);
      const may = before[task]?.every((other) => (ends.get(other) ?? Number.POSITIVE_INFINITY) <= now);
      if (machine < 0 || ends.has(task) || !may) continue;
      free[machine] = now + time;
      ends.set(task, now + time);
    }
  }
  return Math.max(...ends.values());
}

test("Graham's tasks take longer with a machine more, with less before them, and when all are shorter", () => {
  expect(endByList(graham)).toBe(12);
  expect(endByList({ ...graham, machines: 4 })).toBe(15);
  expect(endByList({ ...graham, times: graham.times.map((time) => time - 1) })).toBe(13);
  // Two of the four that wait for the fourth task no longer do.
  const less = graham.before.map((some, task) => (task === 4 || task === 5 ? [] : some));
  expect(endByList({ ...graham, before: less })).toBe(16);
});

const halls = shops({ jobs: 14, stages: 3, places: 2, lanes: 3 });

function more(shop: Shop, stage: number, what: "places" | "lanes" | "judges"): Shop {
  if (what === "judges") return { ...shop, judges: shop.judges === 0 ? 0 : shop.judges + 1 };
  return { ...shop, [what]: shop[what].with(stage, (shop[what][stage] ?? 0) + 1) };
}

function byOrder(shop: Shop) {
  const decoder = decoderOf(shop, atOnce(shop.stages));
  decoder.run(listed(shop.jobs), shop.jobs);
  return decoder.schedule();
}

test("in halls, too, a place, a lane or a judge more can make the rule's day longer, and what is told never does", () => {
  let [longer, runs] = [0, 0];
  fc.assert(
    fc.property(
      halls,
      fc.integer({ min: 0, max: 2 }),
      fc.constantFrom("places", "lanes", "judges"),
      (shop, stage, what) => {
        const before = byOrder(shop);
        const larger = more(shop, stage, what);
        const found = byOrder(larger);
        const kept = withMore(before, larger, found);
        runs += 1;
        if (found.end > before.end) longer += 1;
        expect(kept.end).toBe(Math.min(before.end, found.end));
        expect(breachOf(larger, kept)).toBeNull();
      },
    ),
    { numRuns: 1000, seed: 1 },
  );
  // Else nothing was shown.
  expect(longer).toBeGreaterThan(runs / 100);
});

test("a what-if is told as saving nothing at worst, and its lower end as it is", () => {
  expect(neverLonger({ from: -300, middle: -60, until: -5 })).toEqual({ from: -300, middle: 0, until: 0 });
  expect(neverLonger({ from: -300, middle: 60, until: 500 })).toEqual({ from: -300, middle: 60, until: 500 });
});
