import { secondsAfter } from "../../domain/day/clock.ts";
import { assumedTimes } from "../../domain/plan/assumed.ts";
import type { Hall, Known, Spread } from "../../domain/plan/hall.ts";
import { type PlanSettings, type StationSettings, usualStation } from "../../domain/plan/settings.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { Day } from "../../store/tables/days.ts";

/**
 * A station's time and where it comes from; `turns`: of how many turns of earlier days it is the median.
 * @public declarations of the procedures name it
 */
export interface TimeFrom extends Spread {
  readonly from: "typed" | "earlier" | "assumed";
  readonly turns: number;
}

/** A station as it is planned, with its times. */
export interface PlannedStation extends StationSettings {
  readonly turn: TimeFrom;
  readonly changeOver: TimeFrom;
}

/** Returns the five stations in the held order: what was typed goes before what earlier days tell. */
export function stationsOf(settings: PlanSettings, known: readonly Known[]): PlannedStation[] {
  return testCodes.map((test) => {
    const said = saidOf(settings, test);
    return {
      ...said,
      turn: timeFrom(said.turnSeconds, test, known, "turn"),
      changeOver: timeFrom(said.changeOverSeconds, test, known, "changeOver"),
    };
  });
}

function saidOf(settings: PlanSettings, test: TestCode): StationSettings {
  return settings.stations.find((station) => station.test === test) ?? usualStation(test);
}

function timeFrom(
  typed: number | null,
  test: TestCode,
  known: readonly Known[],
  which: "turn" | "changeOver",
): TimeFrom {
  const earlier = known.find((each) => each.test === test);
  const usual = earlier?.[which] ?? assumedTimes[test][which];
  // Typed is how long, not how much it varies.
  if (typed !== null) return { ...usual, median: typed, from: "typed", turns: 0 };
  return { ...usual, from: earlier === undefined ? "assumed" : "earlier", turns: earlier?.turns ?? 0 };
}

/** Returns the hall that is planned with typed or assumed times, from the day's beginning. */
export function assumedHall(settings: PlanSettings, day: Day): Hall {
  const times = (clocks: { readonly from: string; readonly until: string }) => ({
    from: secondsAfter(settings.begins, clocks.from),
    until: secondsAfter(settings.begins, clocks.until),
  });
  return {
    stations: stationsOf(settings, []).map(({ test, places, lanes, turn, changeOver }) => ({
      ...{ test, places, lanes },
      turn: { median: turn.median, sigma: turn.sigma },
      changeOver: { median: changeOver.median, sigma: changeOver.sigma },
    })),
    judges: settings.judges,
    rest: day.restMinutes * 60,
    breaks: settings.breaks.map(times),
    middleIsFree: settings.middleIsFree,
  };
}

/** Returns what is known of the stations for which an organiser has typed no time: what was typed counts. */
export function untyped(settings: PlanSettings, known: readonly Known[]): Known[] {
  return known.filter(({ test }) => {
    const { turnSeconds, changeOverSeconds } = saidOf(settings, test);
    return turnSeconds === null && changeOverSeconds === null;
  });
}
