import fc from "fast-check";
import { expect, test } from "vitest";
import { assumedTimes } from "../../../../electron/domain/plan/assumed.ts";
import { endsOf, manyDays } from "../../../../electron/domain/plan/days.ts";
import { beginning } from "../../../../electron/domain/plan/floor.ts";
import type { Athlete, Break, Hall } from "../../../../electron/domain/plan/hall.ts";
import { finished } from "../../../../electron/domain/plan/progress.ts";
import { decoderOf } from "../../../../electron/domain/plan/schedule/decode.ts";
import { breachOf } from "../../../../electron/domain/plan/schedule/fits.ts";
import { latestStarts } from "../../../../electron/domain/plan/schedule/latest.ts";
import { wavesOf } from "../../../../electron/domain/plan/schedule/waves.ts";
import { meanOfAll } from "../../../../electron/domain/plan/span.ts";
import { whatIfs } from "../../../../electron/domain/plan/what-ifs.ts";
import { testCodes } from "../../../../electron/domain/tests/registry.ts";
import { atOnce, listed, shops } from "../../../checks/plan-shops.ts";

const lanes = { "push-up": 6, agility: 1, vertical: 1, core: 6, endurance: 6 };
const places = { "push-up": 1, agility: 2, vertical: 2, core: 1, endurance: 1 };
const hall: Hall = {
  stations: testCodes.map((test) => ({
    ...{ test, places: places[test], lanes: lanes[test] },
    ...assumedTimes[test],
  })),
  ...{ judges: null, rest: 300, breaks: [], middleIsFree: false },
};

function roster(leagues: number, athletes: number, arrives: Break): Athlete[] {
  return Array.from({ length: athletes }, (_, id) => ({
    ...{ id, league: `League ${id % leagues}`, arrives, comes: 1, rested: 0 },
    left: leftOf(id),
  }));
}

/** Some skip the last test, some the first: these start elsewhere, and at once. */
function leftOf(id: number): Athlete["left"] {
  if (id % 5 === 0) return testCodes.filter((test) => test !== "endurance");
  return id % 7 === 0 ? testCodes.filter((test) => test !== "push-up") : testCodes;
}

function possibleFor(athletes: readonly Athlete[], window: Break): Map<string, Break> {
  return new Map(athletes.map(({ league }) => [league, window]));
}

test("every athlete is in one wave of their own league, within its window, and no league comes into another's waves", () => {
  const some = fc.record({
    leagues: fc.integer({ min: 1, max: 5 }),
    count: fc.integer({ min: 1, max: 40 }),
    until: fc.integer({ min: 0, max: 8_000 }),
    judges: fc.constantFrom(null, 3, 5),
  });
  fc.assert(
    fc.property(some, ({ leagues, count, until, judges }) => {
      const athletes = roster(leagues, count, { from: 0, until: 900 });
      const possible = possibleFor(athletes, { from: 0, until });
      const options = { known: [], seed: [1, 2, 3, 4] as const, possible, days: 4 };
      const { waves, athletes: told, saved } = finished(wavesOf({ ...hall, judges }, athletes, options));
      expect(saved).toBeGreaterThanOrEqual(0);
      expect(told.map(({ id }) => id)).toEqual(athletes.map(({ id }) => id));
      const inWaves = waves.flatMap((wave) => wave.athletes.map((id) => ({ id, wave })));
      expect(inWaves.map(({ id }) => id).sort((a, b) => a - b)).toEqual(athletes.map(({ id }) => id));
      for (const { id, wave } of inWaves) expect(athletes[id]?.league).toBe(wave.league);
      for (const wave of waves) expect(wave.at).toBeLessThanOrEqual(Math.max(until, 0));
      const spans = [...Map.groupBy(waves, ({ league }) => league).values()].map((own) => ({
        first: Math.min(...own.map(({ at }) => at)),
        last: Math.max(...own.map(({ at }) => at)),
      }));
      const inOrder = spans.toSorted((a, b) => a.first - b.first || a.last - b.last);
      for (const [at, { last }] of inOrder.entries())
        expect(inOrder[at + 1]?.first ?? last).toBeGreaterThanOrEqual(last);
    }),
    { numRuns: 25 },
  );
});

test("120 who all come at once wait a fifth less in waves, and are done no later on days that nobody saw before", () => {
  const athletes = roster(4, 120, { from: 0, until: 900 });
  const possible = possibleFor(athletes, { from: 0, until: 3 * 3600 });
  const found = finished(wavesOf(hall, athletes, { known: [], seed: [1, 2, 3, 4], possible }));
  expect(found.wait).toBeLessThan(0.8 * found.waitAsListed);
  const endOf = (some: readonly Athlete[]) => {
    const { moment, draws } = finished(manyDays(beginning(hall, some), [], [5, 6, 7, 8], 100));
    return meanOfAll(finished(endsOf(moment, draws)));
  };
  expect(endOf(found.athletes)).toBeLessThan(endOf(athletes) + 60);
});

test("leagues that could come sooner than listed are told to where that ends the day sooner", () => {
  const listedLate = roster(3, 45, { from: 0, until: 900 }).map((athlete) => {
    const from = 3600 * (athlete.id % 3);
    return { ...athlete, arrives: { from, until: from + 900 } };
  });
  const days = { known: [], seed: [1, 2, 3, 4] as const };
  const asListed = finished(wavesOf(hall, listedLate, { ...days, possible: new Map() }));
  const sooner = finished(
    wavesOf(hall, listedLate, { ...days, possible: possibleFor(listedLate, { from: 0, until: 9000 }) }),
  );
  expect(sooner.saved).toBeGreaterThan(asListed.saved + 1800);
  for (const wave of asListed.waves) {
    const from = 3600 * Number(wave.league.at(-1));
    expect([wave.at >= from, wave.at <= from + 900]).toEqual([true, true]);
  }
});

test("waves are told among the changes: what they save where leagues come late, and nothing where all are there", () => {
  const saved = (arrives: (athlete: Athlete) => Break) => {
    const athletes = roster(3, 30, { from: 0, until: 0 }).map((each) => ({
      ...each,
      arrives: arrives(each),
    }));
    const options = { known: [], seed: [1, 2, 3, 4] as const, days: 20 };
    const told = finished(whatIfs(hall, athletes, { ...options, changes: [{ kind: "waves" }] }));
    return told.map((whatIf) => whatIf.saved.middle);
  };
  const late = saved(({ id }) => ({ from: 3600 * (id % 3), until: 3600 * (id % 3) + 600 }));
  expect(late[0]).toBeGreaterThan(1800);
  for (const middle of saved(() => ({ from: 0, until: 0 }))) expect(Math.abs(middle)).toBeLessThan(300);
  // By itself, too, when nobody names a change.
  const few = roster(2, 4, { from: 0, until: 0 }).map((each, at) => ({
    ...each,
    arrives: { from: 900 * at, until: 900 * at },
  }));
  const all = finished(whatIfs(hall, few, { known: [], seed: [1, 2, 3, 4], days: 10 }));
  expect(all.map(({ changes }) => changes)).toContainEqual([{ kind: "waves" }]);
});

test("the latest starts of a day are none before its own, and can be run with the same end", () => {
  fc.assert(
    fc.property(shops({ jobs: 15, stages: 3, places: 3, lanes: 3 }), (some) => {
      const shop = { ...some, judges: 0 };
      const decoder = decoderOf(shop, atOnce(3));
      decoder.run(listed(shop.jobs), shop.jobs);
      const schedule = decoder.schedule();
      const starts = latestStarts(shop, schedule);
      expect(breachOf(shop, { ...schedule, starts })).toBeNull();
      for (const [turn, start] of starts.entries()) {
        expect(start).toBeGreaterThanOrEqual((schedule.starts[turn] ?? 0) - 1e-9);
        expect(start + (shop.times[turn] ?? 0)).toBeLessThanOrEqual(Math.max(schedule.end, 0));
      }
    }),
  );
});
