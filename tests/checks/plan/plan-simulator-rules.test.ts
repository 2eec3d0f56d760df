import fc from "fast-check";
import { expect, test } from "vitest";
import type { DayState } from "../../../electron/domain/plan/day-state.ts";
import { beginning, floorOf } from "../../../electron/domain/plan/floor.ts";
import type { Hall } from "../../../electron/domain/plan/hall.ts";
import { simulate } from "../../../electron/domain/plan/simulate.ts";
import type { PlannedTurn } from "../../../electron/domain/plan/told.ts";
import { turnsIn } from "../../../electron/domain/plan/turns.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { anyHall, chanceOf } from "./any-hall.ts";

/** What no hall may do, whatever chance decides. A hair of rounding is no offence. */
const hair = 1e-6;

type AnyHall = typeof anyHall extends fc.Arbitrary<infer Value> ? Value : never;

function dayOf({ hall, athletes, seed, patience }: AnyHall): DayState {
  return simulate(floorOf(beginning(hall, athletes)), chanceOf(hall, athletes, seed, patience));
}

function holds(check: (turns: PlannedTurn[], any: AnyHall) => void): void {
  fc.assert(
    fc.property(anyHall, (any) => check(turnsIn(dayOf(any)), any)),
    { numRuns: 300 },
  );
}

/** Turns that began together at one place. */
function heatsIn(turns: readonly PlannedTurn[]) {
  const together = Map.groupBy(turns, ({ test: code, place, from }) => JSON.stringify([code, place, from]));
  return [...together.values()].flatMap((heat) => {
    const [first] = heat;
    const until = Math.max(...heat.map((turn) => turn.until));
    return first === undefined ? [] : [{ ...first, until, size: heat.length }];
  });
}

test("the same hall and the same chance give the same day", () => {
  holds((turns, any) => {
    expect(turnsIn(dayOf(any))).toEqual(turns);
  });
});

test("whoever comes does every test that is left once, and no other", () => {
  holds((turns, { hall, athletes }) => {
    const here = hall.stations.map(({ test: code }) => code);
    for (const { id, left, comes } of athletes) {
      const own = turns.filter(({ athlete }) => athlete === id).map(({ test: code }) => code);
      const wanted = left.filter((code) => here.includes(code));
      expect([...own].sort()).toEqual(comes < 1 && own.length === 0 ? [] : [...wanted].sort());
    }
  });
});

test("nobody is at two places, or starts without rest, before they came, or before they were rested", () => {
  holds((turns, { hall, athletes }) => {
    for (const { id, arrives, comes, rested } of athletes) {
      const own = turns.filter(({ athlete }) => athlete === id);
      const isHere = comes >= 1 && arrives.until <= 0;
      for (const { from } of own)
        expect(from).toBeGreaterThanOrEqual(isHere ? rested : Math.max(0, arrives.from));
      own.slice(1).forEach(({ from }, index) => {
        expect(from).toBeGreaterThanOrEqual((own[index]?.until ?? 0) + hall.rest - hair);
      });
    }
  });
});

test("the order of the tests is kept, of the first and the last also where the middle is free", () => {
  holds((turns, { hall, athletes }) => {
    for (const { id } of athletes) {
      const own = turns.filter(({ athlete }) => athlete === id).map(({ test: code }) => code);
      const ranks = own.map((code) => rankOf(code, hall));
      expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    }
  });
});

function rankOf(code: (typeof testCodes)[number], { middleIsFree }: Hall): number {
  const index = testCodes.indexOf(code);
  return middleIsFree && index > 0 && index < testCodes.length - 1 ? 1 : index;
}

test("no place holds two heats, and no heat is larger than its lanes", () => {
  holds((turns, { hall }) => {
    for (const { test: code, places, lanes } of hall.stations) {
      const here = heatsIn(turns).filter((heat) => heat.test === code);
      for (const heat of here) {
        expect(heat.size).toBeLessThanOrEqual(lanes);
        expect(heat.place).toBeLessThan(places);
        const others = here.filter((other) => other !== heat && other.place === heat.place);
        for (const other of others)
          expect(other.from >= heat.until - hair || heat.from >= other.until - hair).toBe(true);
      }
    }
  });
});

test("no more heats run at once than there are judges", () => {
  holds((turns, { hall }) => {
    const heats = heatsIn(turns);
    for (const { from } of heats) {
      const running = heats.filter((heat) => heat.from <= from && heat.until > from + hair).length;
      expect(running).toBeLessThanOrEqual(hall.judges ?? Number.POSITIVE_INFINITY);
    }
  });
});

test("nothing starts in a break", () => {
  holds((turns, { hall }) => {
    for (const { from } of turns) {
      expect(hall.breaks.filter((pause) => from >= pause.from && from < pause.until)).toEqual([]);
    }
  });
});
