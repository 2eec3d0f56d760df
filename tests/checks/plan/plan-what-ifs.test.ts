import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/chance.ts";
import { changed } from "../../../electron/domain/plan/change.ts";
import { draw, plainDraws } from "../../../electron/domain/plan/draws.ts";
import { beginning, floorOf } from "../../../electron/domain/plan/floor.ts";
import type { Athlete, Hall, Station } from "../../../electron/domain/plan/hall.ts";
import { finished } from "../../../electron/domain/plan/progress.ts";
import { simulate } from "../../../electron/domain/plan/simulate.ts";
import type { Change, WhatIf } from "../../../electron/domain/plan/told.ts";
import { whatIfs } from "../../../electron/domain/plan/what-ifs.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { anyHall, chanceOf } from "./any-hall.ts";
import { mean } from "./calibration.ts";
import { athletesOf, hallOf, still } from "./halls.ts";

const seed = [20, 26, 11, 30] as const;

function place(test: Station["test"]): Change {
  return { kind: "place", test };
}

/** Returns the minutes that the middle day saves by just these changes. */
function minutesSaved(all: readonly WhatIf[], ...changes: Change[]): number {
  const wanted = JSON.stringify(changes);
  const found = all.find((each) => JSON.stringify(each.changes) === wanted);
  return (found?.saved.middle ?? Number.NaN) / 60;
}

/** A hall that two stations of nearly the same pace hold up: agility a little more than the leap. */
function twoNarrowPlaces(): Hall {
  const batch = { lanes: 6, changeOver: { median: 60, sigma: 0.3 } };
  return hallOf(
    [
      { ...still("push-up", 75, batch), turn: { median: 75, sigma: 0.3 } },
      { ...still("agility", 163), turn: { median: 163, sigma: 0.25 } },
      { ...still("vertical", 151), turn: { median: 151, sigma: 0.25 } },
      { ...still("core", 120, batch), turn: { median: 120, sigma: 0.3 } },
      { ...still("endurance", 330, batch), turn: { median: 330, sigma: 0.2 } },
    ],
    { rest: 300 },
  );
}

/** Returns the mean minutes that changes save over some days on which stations are exactly as fast as the hall says. */
function meanSaved(hall: Hall, athletes: readonly Athlete[], ...changes: Change[]): number {
  const before = beginning(hall, athletes);
  const after = changes.reduce((moment, change) => changed(moment, change) ?? moment, before);
  const saved = Array.from({ length: 20 }, (_none, day) => {
    const draws = plainDraws(athletes.length, hall.stations.length);
    draw(draws, seededChance([day + 1, 2, 3, 4]));
    return (simulate(floorOf(before), draws).end - simulate(floorOf(after), draws).end) / 60;
  });
  return mean(saved);
}

test("of two narrow stations one more place at one saves little, and at both together much", () => {
  // In a hall that was simulated apart from this: a second agility place 6 min, a second leap place 0, both 45.
  const [hall, athletes] = [twoNarrowPlaces(), athletesOf(49)];
  const [agility, leap] = [place("agility"), place("vertical")];
  expect(meanSaved(hall, athletes, agility)).toBeGreaterThan(1);
  expect(meanSaved(hall, athletes, agility)).toBeLessThan(15);
  expect(meanSaved(hall, athletes, leap)).toBeLessThan(3);
  expect(meanSaved(hall, athletes, agility, leap)).toBeGreaterThan(35);
});

test("pairs are told that are worth more than their parts", () => {
  const hall = twoNarrowPlaces();
  const known = hall.stations.map(({ test: code, turn, changeOver }) => ({
    ...{ test: code, turn, changeOver },
    turns: 400,
  }));
  const all = finished(whatIfs(hall, athletesOf(49), { known, seed, days: 30 }));
  const [agility, leap] = [place("agility"), place("vertical")];
  expect(all[0]?.changes).toEqual([agility, leap]);
  expect(minutesSaved(all, agility, leap)).toBeGreaterThan(
    1.5 * (minutesSaved(all, agility) + minutesSaved(all, leap)),
  );
});

test("what saves most is told first", () => {
  const all = finished(whatIfs(twoNarrowPlaces(), athletesOf(20), { known: [], seed, days: 20 }));
  const middles = all.map(({ saved }) => saved.middle);
  expect(all.length).toBe(10 + (10 * 9) / 2);
  expect(middles.every((middle) => middle >= 0)).toBe(true);
  expect(middles[0]).toBe(Math.max(...middles));
});

type AnyHall = typeof anyHall extends fc.Arbitrary<infer Value> ? Value : never;

/** True if this one day ends later with one more place at the first station that makes it so. */
function isLonger({ hall, athletes, seed: day, patience }: AnyHall): boolean {
  const before = beginning(hall, athletes);
  const draws = chanceOf(hall, athletes, day, patience);
  const end = simulate(floorOf(before), draws).end;
  return hall.stations.some(({ test: code }) => {
    const after = changed(before, place(code)) ?? before;
    return simulate(floorOf(after), draws).end > end + 1;
  });
}

test("a day called by a list can end later with one more place (Graham 1966), and is never told so", () => {
  const longer = fc.sample(anyHall, { numRuns: 2000, seed: 1 }).filter(isLonger);
  expect(longer.length).toBeGreaterThan(20);
  const told = longer
    .slice(0, 30)
    .flatMap(({ hall, athletes }) => finished(whatIfs(hall, athletes, { known: [], seed, days: 10 })));
  expect(told.length).toBeGreaterThan(300);
  expect(told.filter(({ saved }) => saved.middle < 0)).toEqual([]);
});

test("the same seed tells the same, and a calculation can be left at any of its steps", () => {
  const [hall, athletes] = [twoNarrowPlaces(), athletesOf(12)];
  const options = { known: [], seed, days: 10 };
  expect(finished(whatIfs(hall, athletes, options))).toEqual(finished(whatIfs(hall, athletes, options)));
  const steps = [...whatIfs(hall, athletes, options)];
  expect(steps.length).toBeGreaterThan(testCodes.length);
  expect(steps).toEqual([...steps].sort((a, b) => a - b));
  expect(Math.max(...steps)).toBeLessThanOrEqual(1);
});
