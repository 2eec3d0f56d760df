import fc from "fast-check";
import { expect, test } from "vitest";
import {
  aheadAfter,
  callOrder,
  lostBy,
  type Passing,
  passesAt,
} from "../../../electron/domain/queue/passing.ts";
import type { QueuePlace, Runner } from "../../../electron/domain/queue/queue.ts";
import { ofEachTest, type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { type CalledAthlete, type CalledHall, holdDay } from "../../checks/plan-calls.ts";

const at = (minute: number) => new Date(Date.UTC(2026, 10, 14, 9, minute)).toISOString();

function place(athleteId: number): QueuePlace {
  return { athleteId, bib: athleteId, waitingSince: at(athleteId), readyAt: at(athleteId), calledAt: null };
}

function passing(ahead: readonly number[], more: Partial<Passing> = {}): Passing {
  return {
    ...{ bound: 600, pace: { cycle: 150, together: 1 }, passes: new Map(), lostElsewhere: new Map() },
    ahead: new Map(ahead.entries()),
    ...more,
  };
}

const line = [place(0), place(1), place(2)];
const called = (free: number, rule: Passing) => callOrder(line, free, rule).map(({ athleteId }) => athleteId);

test("whoever has most ahead is called first, unless somebody who came before would lose more than the bound", () => {
  expect(called(1, passing([300, 300, 900]))).toEqual([2, 0, 1]);
  // Less than a minute more is no reason.
  expect(called(1, passing([300, 300, 350]))).toEqual([0, 1, 2]);
  // Four turns of 150 s are the bound, and the first in the line has lost three already, here or elsewhere.
  expect(called(1, passing([300, 300, 900], { passes: new Map([[0, 3]]) }))).toEqual([2, 0, 1]);
  expect(called(1, passing([300, 300, 900], { passes: new Map([[0, 4]]) }))).toEqual([0, 1, 2]);
  expect(called(1, passing([300, 300, 900], { lostElsewhere: new Map([[1, 500]]) }))).toEqual([0, 1, 2]);
  expect(called(1, passing([300, 400, 900], { lostElsewhere: new Map([[1, 500]]) }))).toEqual([1, 0, 2]);
});

test("without a bound it is first come, first served, and so it is where all have a lane", () => {
  expect(called(1, passing([300, 300, 900], { bound: 0 }))).toEqual([0, 1, 2]);
  expect(called(3, passing([300, 300, 900]))).toEqual([0, 1, 2]);
  expect(called(2, passing([300, 400, 900]))).toEqual([2, 1, 0]);
});

test("a heat that is missed costs its whole length, and as many as start together are one", () => {
  const heat = { cycle: 200, together: 6 };
  expect([0, 1, 6, 7].map((passes) => lostBy(passes, heat))).toEqual([0, 200, 200, 400]);
});

test("ahead are the tests after this one that are neither done nor skipped, each with the rest before it", () => {
  const cycles = ofEachTest(() => 100);
  const runner = { done: new Set<TestCode>(["push-up"]), leftOut: new Set<TestCode>(["core"]) };
  expect(testCodes.map((code) => aheadAfter(code, runner, cycles, 300))).toEqual([1200, 800, 400, 400, 0]);
});

test("who was called before somebody that had waited longer is read from ends and calls", () => {
  const runner = (bib: number, more: Partial<Runner>): Runner => ({
    ...{ athleteId: bib, bib, checkedIn: at(0), leftOut: new Set(), done: new Set(["push-up"]) },
    lastDone: new Map(),
    ...more,
  });
  const done = new Set<TestCode>(["push-up", "agility"]);
  const times = (pushUp: number, agility: number) =>
    new Map<TestCode, string>([
      ["push-up", at(pushUp)],
      ["agility", at(agility)],
    ]);
  const runners = [
    runner(1, { lastDone: new Map([["push-up", at(1)]]) }),
    runner(2, { lastDone: new Map([["push-up", at(2)]]) }),
    // Done before bib 1 was rested at 9:06: of that nobody has lost anything.
    runner(3, { done, lastDone: times(2, 5) }),
    runner(4, { done, lastDone: times(3, 10) }),
    runner(5, { lastDone: new Map([["push-up", at(4)]]) }),
    runner(6, { lastDone: new Map(), done: new Set() }),
  ];
  const passes = passesAt("agility", runners, new Map([[5, at(12)]]), 5);
  // Bib 3 was done before bib 2, who had come at the same time; bibs 4 and 5 went before 1 and 2.
  expect([...passes]).toEqual([
    [1, 2],
    [2, 2],
    [3, 0],
    [4, 0],
    [5, 0],
  ]);
});

/** One station alone, where nobody has been before and nobody goes after: what is ahead is any number. */
const oneStation = fc.record({
  cycle: fc.integer({ min: 30, max: 400 }),
  places: fc.integer({ min: 1, max: 3 }),
  lanes: fc.integer({ min: 1, max: 6 }),
  bound: fc.integer({ min: 0, max: 1500 }),
  arrivals: fc.array(fc.integer({ min: 0, max: 3000 }), { minLength: 1, maxLength: 40 }),
  skips: fc.infiniteStream(fc.boolean()),
});

test("at a station where all turns last alike nobody starts later than first come, first served and the bound", () => {
  fc.assert(
    fc.property(oneStation, ({ cycle, places, lanes, bound, arrivals, skips }) => {
      const hall = hallOf(() => ({ cycle, places, together: places * lanes }));
      const athletes = arrivals.map(
        (arrives): CalledAthlete => ({
          arrives,
          turns: turnsOf(
            () => cycle,
            () => !skips.next().value,
          ),
        }),
      );
      const strict = holdDay(hall, athletes, 0);
      const ruled = holdDay(hall, athletes, bound);
      for (const id of athletes.keys()) {
        const [first] = [...(strict.starts[id] ?? [])];
        if (first?.[0] !== "push-up") continue;
        expect(ruled.starts[id]?.get("push-up") ?? 0).toBeLessThanOrEqual(first[1] + bound);
      }
    }),
    { numRuns: 400 },
  );
});

/** Everybody comes at once, and each station is slower than the one before: there is a line at all of them. */
const crowd = fc.record({
  cycle: fc.integer({ min: 60, max: 120 }),
  bound: fc.integer({ min: 0, max: 900 }),
  arrivals: fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 10, maxLength: 30 }),
  skips: fc.infiniteStream(fc.integer({ min: 0, max: 4 }).map((one) => one === 0)),
  salt: fc.nat(),
});

test("over a whole day nobody loses more than the bound, is called before they are rested, or out of the held order", () => {
  let most = 0;
  fc.assert(
    fc.property(crowd, ({ cycle, bound, arrivals, skips, salt }) => {
      const hall = hallOf((index) => ({
        cycle: cycle + 30 * index,
        places: 1,
        together: index === 3 ? 2 : 1,
      }));
      const athletes = arrivals.map((arrives, id): CalledAthlete => {
        const shorter = (id * 7 + salt) % 25;
        return {
          arrives,
          turns: turnsOf(
            (index) => cycle + 30 * index - shorter,
            () => !skips.next().value,
          ),
        };
      });
      const { starts, lost } = holdDay(hall, athletes, bound);
      for (const [id, { arrives, turns }] of athletes.entries()) {
        expect(lost[id]).toBeLessThanOrEqual(bound);
        most = Math.max(most, lost[id] ?? 0);
        let rested = arrives;
        for (const [code, time] of turns) {
          const start = starts[id]?.get(code) ?? -1;
          expect(start).toBeGreaterThanOrEqual(rested);
          rested = start + time + hall.rest;
        }
      }
    }),
    { numRuns: 60, seed: 1 },
  );
  // Else nobody was passed over.
  expect(most).toBeGreaterThan(600);
});

function hallOf(pace: (index: number) => { cycle: number; places: number; together: number }): CalledHall {
  return { paces: ofEachTest((code) => pace(testCodes.indexOf(code))), rest: 300, patience: 0 };
}

function turnsOf(time: (index: number) => number, does: () => boolean): Map<TestCode, number> {
  return new Map(testCodes.flatMap((code, index) => (does() ? [[code, time(index)]] : [])));
}
