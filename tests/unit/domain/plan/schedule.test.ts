import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../../electron/domain/chance.ts";
import { benchOf, type Calling, clear, scheduleOf } from "../../../../electron/domain/plan/schedule/bench.ts";
import { boundOf } from "../../../../electron/domain/plan/schedule/bound.ts";
import { momentByMoment } from "../../../../electron/domain/plan/schedule/by-moment.ts";
import { decoderOf } from "../../../../electron/domain/plan/schedule/decode.ts";
import { breachOf } from "../../../../electron/domain/plan/schedule/fits.ts";
import { search } from "../../../../electron/domain/plan/schedule/search.ts";
import { plainShop, type Shop } from "../../../../electron/domain/plan/schedule/shop.ts";
import { atOnce, callings, listed, shops } from "../../../checks/plan-shops.ts";

const halls = shops({ jobs: 20, stages: 4, places: 3, lanes: 4 });

function scheduled(shop: Shop, calling: Calling) {
  const decoder = decoderOf(shop, calling);
  decoder.run(listed(shop.jobs), shop.jobs);
  return decoder.schedule();
}

test("whatever a hall has, an order becomes a day that the hall can run, and none below the bound", () => {
  fc.assert(
    fc.property(halls, callings(4), (shop, calling) => {
      const schedule = scheduled(shop, calling);
      expect(breachOf(shop, schedule)).toBeNull();
      expect(schedule.end).toBeGreaterThanOrEqual(boundOf(shop) - 1e-6);
    }),
    { numRuns: 500 },
  );
});

test("where judges are enough, a day worked out by moments is that worked out by stations", () => {
  fc.assert(
    fc.property(halls, fc.boolean(), (some, byOrder) => {
      const shop = { ...some, judges: 0 };
      const calling = atOnce(4, byOrder);
      const bench = benchOf(shop);
      clear(bench, shop, listed(shop.jobs), shop.jobs);
      momentByMoment(shop, calling, bench)(listed(shop.jobs), shop.jobs);
      const { starts, end } = scheduled(shop, calling);
      expect([...scheduleOf(bench).starts]).toEqual([...starts]);
      expect(scheduleOf(bench).end).toBe(end);
    }),
  );
});

test("a day that breaks a rule is found out: a turn that is moved to before its athlete or its place is free", () => {
  fc.assert(
    fc.property(halls, fc.nat(), (shop, which) => {
      const schedule = scheduled(shop, atOnce(4));
      const turns = [...schedule.starts.keys()].filter((turn) => (schedule.starts[turn] ?? -1) >= 0);
      const turn = turns[which % Math.max(turns.length, 1)];
      fc.pre(turn !== undefined && turns.length > 1);
      const start = schedule.starts[turn ?? 0] ?? 0;
      fc.pre(start > 0.5);
      // Every start is as early as it can be, so none can be earlier, alone and at its place.
      const starts = schedule.starts.with(turn ?? 0, start - 0.5);
      expect(breachOf(shop, { ...schedule, starts })).not.toBeNull();
    }),
  );
});

test("each rule that is broken has its name", () => {
  const shop = plainShop([1], [[10], [10]]);
  const breach = (starts: number[], more: Partial<Shop> = {}) =>
    breachOf({ ...shop, ...more }, { starts: Float64Array.from(starts), places: new Int32Array(2), end: 20 });
  expect(breach([0, 10])).toBeNull();
  expect(breach([0, 5])).toBe("places");
  expect(breach([0, 0])).toBe("lanes");
  expect(breach([0, -1])).toBe("left out");
  expect(breach([0, 10], { release: Float64Array.of(0, 11) })).toBe("arrival");
  expect(breach([0, 10], { breaks: Float64Array.of(10, 20) })).toBe("break");
  expect(breach([0, 10], { changeOver: Float64Array.of(1) })).toBe("places");
  expect(breach([0, 0], { lanes: Int32Array.of(2) })).toBeNull();
  const two = {
    ...plainShop(
      [1, 1],
      [
        [10, 10],
        [10, 10],
      ],
    ),
    rest: 5,
  };
  const other = (starts: number[], more: Partial<Shop> = {}) =>
    breachOf({ ...two, ...more }, { starts: Float64Array.from(starts), places: new Int32Array(4), end: 35 });
  expect(other([0, 14, 10, 25])).toBe("rest");
  expect(other([0, 15, 10, 25])).toBeNull();
  expect(other([0, 15, 10, 25], { judges: 1 })).toBe("judges");
});

test("a heat that waits starts fuller: the next is rested in a minute", () => {
  const shop = {
    ...plainShop([1], [[60], [60]]),
    lanes: Int32Array.of(2),
    release: Float64Array.of(0, 50),
  };
  expect(scheduled(shop, atOnce(1)).end).toBe(120);
  expect(scheduled(shop, { byOrder: true, patience: Float64Array.of(60) }).end).toBe(110);
  expect(scheduled(shop, { byOrder: true, patience: Float64Array.of(40) }).end).toBe(120);
});

const searching = (seed: number, evaluations: number) => ({
  ...{ calling: atOnce(4), random: seededChance([seed, 2, 3, 4]), bound: 0 },
  evaluations,
});

test("a search repeats with its seed, never gets worse, and can be stopped at any step", () => {
  fc.assert(
    fc.property(halls, (shop) => {
      const ends = [...search(shop, searching(1, 600))].map(({ end }) => end);
      expect(ends).toEqual([...search(shop, searching(1, 600))].map(({ end }) => end));
      expect(ends).toEqual(ends.toSorted((a, b) => b - a));
      for (const found of search(shop, searching(1, 600))) {
        expect([...found.order()].sort((a, b) => a - b)).toEqual([...listed(shop.jobs)]);
        expect(breachOf(shop, found.schedule())).toBeNull();
        break;
      }
    }),
    { numRuns: 12 },
  );
});

test("nobody and one athlete are found at once", () => {
  const nobody = [...search(plainShop([1, 1], []), searching(1, 100))];
  expect(nobody.map(({ end }) => end)).toEqual([0]);
  const one = [...search(plainShop([1, 1], [[3, 4]]), searching(1, 100))];
  expect(one.map(({ end }) => end)).toEqual([7]);
});
