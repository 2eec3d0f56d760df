import { leastRestMinutes } from "../queue/rest.ts";
import type { Athlete, Hall, Moment, Station } from "./hall.ts";
import type { Change } from "./told.ts";

/**
 * Returns a moment as it would be with a change made; null where the change is none there.
 * @param waves the same athletes, each to be there with their wave; of a moment without any, waves are no change
 */
export function changed(moment: Moment, change: Change, waves: readonly Athlete[] = []): Moment | null {
  const { hall } = moment;
  switch (change.kind) {
    case "place":
      return atStation(moment, change.test, (station) => ({ ...station, places: station.places + 1 }));
    case "lane":
      return atStation(moment, change.test, (station) => ({ ...station, lanes: station.lanes + 1 }));
    case "judge":
      return hall.judges === null ? null : inHall(moment, { judges: hall.judges + 1 });
    case "rest":
      return withLessRest(moment, change.lessSeconds);
    case "middle":
      return hall.middleIsFree ? null : inHall(moment, { middleIsFree: true });
    case "waves":
      return inWaves(moment, waves);
  }
}

function inWaves(moment: Moment, waves: readonly Athlete[]): Moment | null {
  const arrives = new Map(waves.map((athlete) => [athlete.id, athlete.arrives]));
  const athletes = moment.athletes.map((athlete) => ({
    ...athlete,
    arrives: arrives.get(athlete.id) ?? athlete.arrives,
  }));
  const isNone = athletes.every(({ arrives: { from, until } }, index) => {
    const before = moment.athletes[index]?.arrives;
    return from === before?.from && until === before.until;
  });
  return isNone ? null : { ...moment, athletes };
}

function inHall(moment: Moment, part: Partial<Hall>): Moment {
  return { ...moment, hall: { ...moment.hall, ...part } };
}

function atStation(
  moment: Moment,
  test: Station["test"],
  more: (station: Station) => Station,
): Moment | null {
  const { stations } = moment.hall;
  if (!stations.some((station) => station.test === test)) return null;
  return inHall(moment, {
    stations: stations.map((station) => (station.test === test ? more(station) : station)),
  });
}

/** Rest is never set below the least that a mark needs. Who rests now is ready earlier by as much. */
function withLessRest(moment: Moment, lessSeconds: number): Moment | null {
  const rest = Math.max(leastRestMinutes * 60, moment.hall.rest - lessSeconds);
  const less = moment.hall.rest - rest;
  if (less <= 0) return null;
  const rested = (athlete: Athlete) => (athlete.rested > 0 ? athlete.rested - less : athlete.rested);
  return {
    ...inHall(moment, { rest }),
    athletes: moment.athletes.map((athlete) => ({ ...athlete, rested: rested(athlete) })),
  };
}
