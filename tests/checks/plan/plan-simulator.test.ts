import { expect, test } from "vitest";
import { plainDraws } from "../../../electron/domain/plan/draws.ts";
import { beginning, floorOf } from "../../../electron/domain/plan/floor.ts";
import { simulate } from "../../../electron/domain/plan/simulate.ts";
import { turnsIn } from "../../../electron/domain/plan/turns.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { athletesOf, hallOf, plainDay, still } from "./halls.ts";

/**
 * By hand: with one place at each of m stations, turns of p and a rest of r, the first athlete is done after
 * m p + (m - 1) r, and every other one p later than the one before.
 */
test("49 athletes, five stations of 2.6 min, 5 min of rest: 157.8 min, to the second", () => {
  const hall = hallOf(
    testCodes.map((code) => still(code, 156)),
    { rest: 300 },
  );
  expect(plainDay(hall, athletesOf(49)).end).toBe(157.8 * 60);
});

test.each([
  [1, 4],
  [12, 4],
  [13, 4],
  [60, 6],
  [5, 12],
])(
  "a batch station alone, %i athletes in %i lanes: ceil(n / lanes) times a heat and its change-over",
  (n, lanes) => {
    const core = still("core", 100, { lanes, changeOver: { median: 60, sigma: 0 } });
    const day = plainDay(hallOf([core]), athletesOf(n, ["core"]));
    expect(day.end).toBe(Math.ceil(n / lanes) * (100 + 60));
  },
);

test("whoever has waited longest among the rested goes first, whatever the list says", () => {
  const waits = [-100, -300, -200, -400];
  const athletes = athletesOf(4, ["vertical"]).map((athlete, index) => {
    const came = waits[index] ?? 0;
    return { ...athlete, arrives: { from: came, until: came }, rested: index === 3 ? 150 : 0 };
  });
  const day = plainDay(hallOf([still("vertical", 100)]), athletes);
  // The last of the list came first and rests still: at 150 s nobody who is left has waited longer.
  expect(turnsIn(day).map(({ athlete }) => athlete)).toEqual([1, 2, 3, 0]);
});

test("a heat that is not full waits for somebody who is about to be rested, and not for longer than its volunteer does", () => {
  const core = still("core", 100, { lanes: 2 });
  const athletes = (rested: number) =>
    athletesOf(2, ["core"], { arrives: { from: -900, until: -900 } }).map((athlete, index) => ({
      ...athlete,
      rested: index === 0 ? 0 : rested,
    }));
  const endWith = (rested: number, patience: number) => {
    const [hall, some] = [hallOf([core]), athletes(rested)];
    const draws = plainDraws(2, 1);
    draws.patience.fill(patience);
    return simulate(floorOf(beginning(hall, some)), draws).end;
  };
  // Together after 50 s of waiting; one after the other where nobody waits that long.
  expect(endWith(50, 60)).toBe(150);
  expect(endWith(50, 40)).toBe(200);
});

test("a heat that runs already ends no sooner than now, and its place is free after it", () => {
  const core = still("core", 100, { lanes: 2 });
  const athletes = athletesOf(3, ["core"], { arrives: { from: -900, until: -900 } });
  const running = [{ test: "core" as const, athletes: [0, 1], since: -60 }];
  const moment = { ...beginning(hallOf([core]), athletes), running };
  expect(simulate(floorOf(moment), plainDraws(3, 1)).end).toBe(40 + 100);
});
