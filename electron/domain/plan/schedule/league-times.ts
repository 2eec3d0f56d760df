import type { Seed } from "../../chance.ts";
import type { Athlete, Hall, Known } from "../hall.ts";
import type { Calculation } from "../progress.ts";
import type { LeagueTime } from "../told.ts";
import { wavesOf } from "./waves.ts";

/** Days on which ways to arrive are tried; other ones than those on which the best of them is told. */
const daysOfWaves = 20;
/**
 * A league may be asked to come at any moment from the day's first arrival on until so many seconds after its beginning: a
 * time of day eighteen hours after it would be read as one before it.
 */
const latest = 17 * 3600;

/** Returns everybody with the time to be there, one a league, as it is best for the day whatever was agreed with the leagues. */
export function* bestWaves(
  hall: Hall,
  athletes: readonly Athlete[],
  known: readonly Known[],
  [one, two, three, four]: Seed,
): Calculation<readonly Athlete[]> {
  const from = athletes.reduce((first, { arrives }) => Math.min(first, arrives.from), latest);
  const possible = new Map(athletes.map(({ league }) => [league, { from, until: latest }]));
  const seed: Seed = [four, three, two, one];
  const options = { known, seed, possible, days: daysOfWaves, together: true };
  return (yield* wavesOf(hall, athletes, options)).athletes;
}

/** Returns when each league's first athlete is there and when its last one is, in the order in which they come. */
export function leagueTimes(athletes: readonly Athlete[]): LeagueTime[] {
  return [...Map.groupBy(athletes, ({ league }) => league)]
    .map(([league, some]) => ({
      league,
      from: Math.min(...some.map(({ arrives }) => arrives.from)),
      until: Math.max(...some.map(({ arrives }) => arrives.until)),
    }))
    .sort((a, b) => a.from - b.from || a.league.localeCompare(b.league, "en"));
}
