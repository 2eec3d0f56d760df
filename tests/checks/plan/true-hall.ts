import type { Athlete, Break, Hall, Station } from "../../../electron/domain/plan/hall.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { Draws } from "./draws.ts";

/**
 * Halls to hold the planner's forecasts against, written apart from it: whoever wrote this had not read its simulator.
 * Turns are gamma distributed with a floor and a cap (the planner's are lognormal), people dawdle on their way, a station
 * may pause, some come late or never, some leave, some skip a test, the hall has its own slowness and its own volunteers.
 * All numbers are common practice, no source, and wide on purpose.
 */
export interface TrueHall {
  readonly seed: string;
  /** What the organiser knows. The times of its stations are not in it: `turn` and `changeOver` are 0. */
  readonly hall: Hall;
  /** Everybody on the list, with the window that their league was told. */
  readonly roster: readonly Athlete[];
  readonly stations: ReadonlyMap<TestCode, TrueStation>;
  /** Chance that somebody on the list comes; the organiser believes in nine of ten. */
  readonly comes: number;
}

/** What nobody in the hall knows of a station. */
interface TrueStation {
  /** Factor of all its turns on this day. */
  readonly slowness: number;
  /** Mean seconds from the end of a heat until the next is called. */
  readonly changeOver: number;
  /** Seconds that a volunteer waits for one more athlete who is about to be rested. */
  readonly patience: number;
  /** True where the program runs the heats, and so knows when they start. */
  readonly live: boolean;
  /** True where results go on paper and are keyed without a time, every ten minutes. */
  readonly paper: boolean;
  /** The whole station stands. */
  readonly pause: Break | null;
}

const minute = 60;

/** The hall of a seed: 12 to 120 athletes. */
export function trueHall(seed: string): TrueHall {
  const draws = new Draws(seed);
  const count = draws.whole("athletes", 12, 120);
  const stations = testCodes.map((test) => stationOf(draws, test, count));
  const all = stations.reduce((sum, { places }) => sum + places, 0);
  const few = draws.happens("few judges", 0.3);
  const breakFrom = draws.uniform("break", 60, 150) * minute;
  return {
    seed,
    hall: {
      stations,
      judges: few ? Math.max(3, all - draws.whole("judges", 1, 2)) : null,
      rest: draws.whole("rest", 3, 6) * minute,
      breaks: draws.happens("has a break", 0.1) ? [{ from: breakFrom, until: breakFrom + 20 * minute }] : [],
      middleIsFree: false,
    },
    roster: rosterOf(draws, count),
    stations: new Map(testCodes.map((test) => [test, trueStationOf(draws, test)])),
    comes: draws.uniform("comes", 0.85, 0.98),
  };
}

function stationOf(draws: Draws, test: TestCode, count: number): Station {
  const nothing = { median: 0, sigma: 0 };
  const byHeat = test === "push-up" || test === "core" || test === "endurance";
  const big = count > 60 ? 1 : 0;
  return {
    test,
    places: byHeat ? 1 : draws.whole(`places of ${test}`, 1, 2) + big,
    lanes: byHeat ? draws.whole(`lanes of ${test}`, 3, 6) + 2 * big : 1,
    turn: nothing,
    changeOver: nothing,
  };
}

function trueStationOf(draws: Draws, test: TestCode): TrueStation {
  const from = draws.uniform(`pause of ${test}`, 20, 140) * minute;
  const live = draws.happens(`${test} is live`, 0.5);
  return {
    slowness: draws.factor(`slowness of ${test}`, 0.18) * draws.factor("slowness", 0.1),
    changeOver: draws.uniform(`change-over of ${test}`, 15, 70),
    patience: draws.uniform(`patience of ${test}`, 0, 120),
    live,
    paper: !live && draws.happens(`${test} is on paper`, 0.08),
    pause: draws.happens(`${test} pauses`, 0.2)
      ? { from, until: from + draws.uniform(`pause for ${test}`, 4, 15) * minute }
      : null,
  };
}

/** How a hall's athletes come: all at the beginning, league by league, or one by one. */
function rosterOf(draws: Draws, count: number): Athlete[] {
  const leagues = draws.whole("leagues", 1, 4);
  const way = draws.whole("way", 1, 3);
  const apart = draws.uniform("apart", 15, 45) * minute;
  const trickle = draws.uniform("trickle", 1.5, 3) * minute * count;
  return Array.from({ length: count }, (_, index) => {
    const league = index % leagues;
    const windows: Record<number, Break> = {
      1: { from: 0, until: 10 * minute },
      2: { from: league * apart, until: league * apart + 20 * minute },
    };
    return {
      id: index + 1,
      league: `League ${league + 1}`,
      arrives: windows[way] ?? { from: 0, until: trickle },
      comes: 0.9,
      left: testCodes,
      rested: 0,
    };
  });
}
