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
    const said = settings.stations.find((station) => station.test === test) ?? usualStation(test);
    return {
      ...said,
      turn: timeFrom(said.turnSeconds, test, known, "turn"),
      changeOver: timeFrom(said.changeOverSeconds, test, known, "changeOver"),
    };
  });
}

function timeFrom(
  typed: number | null,
  test: TestCode,
  known: readonly Known[],
  which: "turn" | "changeOver",
): TimeFrom {
  const earlier = known.find((each) => each.test === test);
  const usual = earlier?.[which] ?? assumedTimes[test]?.[which] ?? { median: 0, sigma: 0 };
  // Typed is how long, not how much it varies.
  if (typed !== null) return { ...usual, median: typed, from: "typed", turns: 0 };
  return { ...usual, from: earlier === undefined ? "assumed" : "earlier", turns: earlier?.turns ?? 0 };
}

/** Returns the hall that is planned, with times from the day's beginning. */
export function hallOf(settings: PlanSettings, day: Day, known: readonly Known[]): Hall {
  return {
    stations: stationsOf(settings, known).map(({ test, places, lanes, turn, changeOver }) => ({
      ...{ test, places, lanes },
      turn: { median: turn.median, sigma: turn.sigma },
      changeOver: { median: changeOver.median, sigma: changeOver.sigma },
    })),
    judges: settings.judges,
    rest: day.restMinutes * 60,
    breaks: settings.breaks.map(({ from, until }) => ({
      from: secondsAfter(settings.begins, from),
      until: secondsAfter(settings.begins, until),
    })),
    middleIsFree: settings.middleIsFree,
  };
}
