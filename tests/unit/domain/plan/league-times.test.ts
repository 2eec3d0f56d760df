import fc from "fast-check";
import { expect, test } from "vitest";
import { clockAfter, secondsAfter } from "../../../../electron/domain/day/clock.ts";
import { assumedTimes } from "../../../../electron/domain/plan/assumed.ts";
import { endsOf, manyDays } from "../../../../electron/domain/plan/days.ts";
import { beginning } from "../../../../electron/domain/plan/floor.ts";
import type { Athlete, Break, Hall } from "../../../../electron/domain/plan/hall.ts";
import { finished } from "../../../../electron/domain/plan/progress.ts";
import { leagueTimes } from "../../../../electron/domain/plan/schedule/league-times.ts";
import { wavesOf } from "../../../../electron/domain/plan/schedule/waves.ts";
import { meanOfAll } from "../../../../electron/domain/plan/span.ts";
import type { WhatIf } from "../../../../electron/domain/plan/told.ts";
import { whatIfs } from "../../../../electron/domain/plan/what-ifs.ts";
import { athletesOf, hallOf, still } from "../../../checks/plan/halls.ts";

const hall: Hall = hallOf(
  [
    { ...still("push-up", 0, { lanes: 6 }), ...assumedTimes["push-up"] },
    { ...still("agility", 0, { places: 2 }), ...assumedTimes.agility },
    { ...still("vertical", 0, { places: 2 }), ...assumedTimes.vertical },
    { ...still("core", 0, { lanes: 6 }), ...assumedTimes.core },
    { ...still("endurance", 0, { lanes: 6 }), ...assumedTimes.endurance },
  ],
  { rest: 300 },
);

function roster(leagues: number, count: number, windowOf: (id: number) => Break): Athlete[] {
  return athletesOf(count).map((athlete, id) => ({
    ...{ ...athlete, league: `League ${id % leagues}`, arrives: windowOf(id % leagues) },
  }));
}

/** What the leagues' coming at other times brings, where it is told. */
function toldOf(athletes: readonly Athlete[], days: number): WhatIf | undefined {
  const options = { known: [], seed: [1, 2, 3, 4] as const, days };
  return finished(whatIfs(hall, athletes, { ...options, changes: [{ kind: "waves" }] }))[0];
}

/** Everybody with the time of their league. */
function comingAt(athletes: readonly Athlete[], { waves }: WhatIf): Athlete[] {
  const times = new Map(waves?.times.map(({ league, from, until }) => [league, { from, until }]));
  return athletes.map((each) => ({ ...each, arrives: times.get(each.league) ?? each.arrives }));
}

/** The mean end on the days on which the times were chosen. */
function endOf(athletes: readonly Athlete[]): number {
  const { moment, draws } = finished(manyDays(beginning(hall, athletes), [], [4, 3, 2, 1], 20));
  return meanOfAll(finished(endsOf(moment, draws)));
}

test("120 who all come at once are given a time for each league: the day ends no later, and they wait minutes less", () => {
  const athletes = roster(4, 120, () => ({ from: 0, until: 0 }));
  const told = toldOf(athletes, 30);
  const { times = [], wait = 0, waitAsGiven = 0 } = told?.waves ?? {};
  expect(times.map(({ league }) => league).sort()).toEqual(["League 0", "League 1", "League 2", "League 3"]);
  expect(times[0]?.from).toBe(0);
  expect(new Set(times.map(({ from }) => from)).size).toBeGreaterThan(1);
  expect(wait).toBeLessThan(waitAsGiven - 120);
  expect(told?.saved.middle).toBeGreaterThanOrEqual(0);
  const taken = comingAt(athletes, told ?? { changes: [], saved: { from: 0, middle: 0, until: 0 } });
  expect(endOf(taken)).toBeLessThanOrEqual(endOf(athletes));
  const possible = new Map(times.map(({ league }) => [league, { from: 0, until: 17 * 3600 }]));
  const options = { known: [], seed: [4, 3, 2, 1] as const, possible, days: 20, together: true };
  const found = finished(wavesOf(hall, athletes, options));
  expect(times).toEqual(leagueTimes(found.athletes));
  expect(found.waves.map(({ league, at }) => [league, at])).toEqual(
    times.map(({ league, from }) => [league, from]),
  );
});

test("times that are told make the day no longer, are one a league, and none once they are taken", () => {
  const some = fc.record({
    leagues: fc.integer({ min: 1, max: 4 }),
    count: fc.integer({ min: 4, max: 24 }),
    apart: fc.constantFrom(0, 900, 3600),
    long: fc.constantFrom(0, 1800),
  });
  let told = 0;
  fc.assert(
    fc.property(some, ({ leagues, count, apart, long }) => {
      const athletes = roster(leagues, count, (of) => ({ from: apart * of, until: apart * of + long }));
      const whatIf = toldOf(athletes, 10);
      if (whatIf?.waves === undefined) return;
      told += 1;
      for (const { from, until } of whatIf.waves.times) expect([from >= 0, until]).toEqual([true, from]);
      const taken = comingAt(athletes, whatIf);
      expect(endOf(taken)).toBeLessThanOrEqual(endOf(athletes));
      expect(toldOf(taken, 10)).toBeUndefined();
    }),
    { numRuns: 16, seed: 1 },
  );
  expect(told).toBeGreaterThan(3);
});

test("a time of day that lies so many seconds after the beginning is read back as these", () => {
  expect(clockAfter("09:00", 1200)).toBe("09:20");
  expect(clockAfter("22:30", 2 * 3600)).toBe("00:30");
  const minuteOfDay = fc.integer({ min: 0, max: 1439 });
  fc.assert(
    fc.property(minuteOfDay, minuteOfDay, (one, other) => {
      const [begins, clock] = [clockAfter("00:00", one * 60), clockAfter("00:00", other * 60)];
      expect(clockAfter(begins, secondsAfter(begins, clock))).toBe(clock);
      const late = Math.min(other, 17 * 60) * 60;
      expect(secondsAfter(begins, clockAfter(begins, late))).toBe(late);
    }),
  );
});
