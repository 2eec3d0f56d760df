import { seededChance } from "../../electron/domain/chance.ts";
import { assumedTimes } from "../../electron/domain/plan/assumed.ts";
import { ofEachTest, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { type CalledAthlete, type CalledHall, holdDay } from "../checks/plan-calls.ts";

/** What calling by the work ahead brings in one kind of hall. Minutes, on average of its days. */
export interface CallsBench {
  readonly hall: string;
  readonly athletes: number;
  /** Part of all tests that are skipped. */
  readonly skipped: number;
  readonly end: number;
  /** By bound: how much earlier the day ends, and by how much the one who starts later most is later than first come, first served. */
  readonly bounds: readonly { readonly bound: number; readonly saved: number; readonly later: number }[];
}

const bounds = [5, 10, 20];
const days = 60;

/** Places at the five stations. Six start together at push-up, plank and circuit. */
const halls: readonly (readonly [name: string, places: readonly number[]])[] = [
  ["one place each", [1, 1, 1, 1, 1]],
  ["two of agility", [1, 2, 1, 1, 1]],
  ["two of agility and leap", [1, 2, 2, 1, 1]],
  ["three of agility and leap, two circuits", [1, 3, 3, 1, 2]],
];

/** Holds the same days first come, first served and by the work ahead: athletes come one every 90 seconds on average. */
export function callsBench(): CallsBench[] {
  return halls.flatMap(([hall, places]) =>
    [0, 0.05, 0.15].map((skipped) => benchOf(hall, hallOf(places), 49, skipped)),
  );
}

function benchOf(name: string, hall: CalledHall, athletes: number, skipped: number): CallsBench {
  const random = seededChance([1, 2, 3, 4]);
  const rosters = Array.from({ length: days }, () => rosterOf(athletes, skipped, random));
  const strict = rosters.map((roster) => holdDay(hall, roster, 0));
  const minutes = (values: readonly number[]) =>
    values.reduce((sum, value) => sum + value, 0) / values.length / 60;
  return {
    ...{ hall: name, athletes, skipped, end: minutes(strict.map(({ end }) => end)) },
    bounds: bounds.map((bound) => {
      const ruled = rosters.map((roster) => holdDay(hall, roster, bound * 60));
      const later = ruled.map(({ starts }, day) =>
        Math.max(
          0,
          ...starts.flatMap((own, id) =>
            [...own].map(([test, start]) => start - (strict[day]?.starts[id]?.get(test) ?? start)),
          ),
        ),
      );
      const saved = ruled.map(({ end }, day) => (strict[day]?.end ?? end) - end);
      return { bound, saved: minutes(saved), later: minutes(later) };
    }),
  };
}

function hallOf(places: readonly number[]): CalledHall {
  return {
    paces: ofEachTest((test) => {
      const { turn, changeOver } = assumedTimes[test];
      const count = places[testCodes.indexOf(test)] ?? 1;
      const lanes = test === "agility" || test === "vertical" ? 1 : 6;
      return { cycle: turn.median + changeOver.median, places: count, together: count * lanes };
    }),
    ...{ rest: 300, patience: 60 },
  };
}

function rosterOf(athletes: number, skipped: number, random: () => number): CalledAthlete[] {
  return Array.from({ length: athletes }, () => ({
    arrives: random() * athletes * 90,
    turns: new Map(
      testCodes.flatMap((test): [TestCode, number][] =>
        random() < skipped ? [] : [[test, turnOf(test, random)]],
      ),
    ),
  }));
}

function turnOf(test: TestCode, random: () => number): number {
  const { turn, changeOver } = assumedTimes[test];
  // Box & Muller 1958.
  const normal = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return turn.median * Math.exp(turn.sigma * normal) + changeOver.median;
}
