import { z } from "zod";
import { clockPattern } from "../day/clock.ts";
import { definitionOf, testCodes } from "../tests/registry.ts";

const clock = z.string().regex(clockPattern);

/** The most of each that a plan takes: ours, no source. */
export const planMost = Object.freeze({
  ofLeague: 400,
  places: 12,
  lanes: 12,
  judges: 60,
  breaks: 6,
  boundMinutes: 60,
});

/** When a league comes, how many of it, and how likely each of them comes at all. */
const leagueSettings = z.object({
  league: z.string().trim().min(1).max(80),
  /** Number of its athletes; null: as many as are on the list. */
  number: z.int().min(0).max(planMost.ofLeague).nullable(),
  from: clock,
  until: clock,
  comes: z.number().min(0).max(1),
});

const stationSettings = z.object({
  test: z.enum(testCodes),
  places: z.int().min(1).max(planMost.places),
  lanes: z.int().min(1).max(planMost.lanes),
  /** Median seconds of a turn; null: as earlier days tell, or as assumed. */
  turnSeconds: z.int().min(5).max(3600).nullable(),
  /** Median seconds from one turn's end to the next one's start; null likewise. */
  changeOverSeconds: z.int().min(0).max(1800).nullable(),
});

/** What an organiser plans for a day. Times of day are the hall's own, as "09:05". The rest is the day's own. */
export const planSettings = z.object({
  begins: clock,
  /** Leagues that are not named come as {@link usualLeague}. */
  leagues: z.array(leagueSettings).max(60),
  /** Stations that are not named are as {@link usualStation}. */
  stations: z.array(stationSettings).max(testCodes.length),
  /** How many judges there are; null: as many as the places need. */
  judges: z.int().min(1).max(planMost.judges).nullable(),
  breaks: z.array(z.object({ from: clock, until: clock })).max(planMost.breaks),
  /** True where the three tests in the middle may be done in any order. */
  middleIsFree: z.boolean(),
  /**
   * Minutes that an athlete may lose on a day, at the stations together, by others with more ahead being called before them;
   * 0: first come, first served.
   */
  boundMinutes: z.int().min(0).max(planMost.boundMinutes),
});

export type PlanSettings = z.infer<typeof planSettings>;
export type LeagueSettings = z.infer<typeof leagueSettings>;
export type StationSettings = z.infer<typeof stationSettings>;

/**
 * By itself nobody is called before somebody who came first. With ten minutes a simulated day of 49 ends 1.8 to 3.6 minutes
 * sooner where one station is far slower than the others and one test in 20 to 7 is skipped, and a tenth of a minute sooner
 * where none is; but whoever is passed over most starts a quarter of an hour later, since those who went ahead stay ahead
 * (`npm run bench -- calls`). That is the organiser's to choose.
 */
const usualBound = 0;

/** Part of those on a list who come, where nobody has said: ours, no source. */
const usuallyComes = 0.9;

/** A league of which nothing was said comes when the day begins, as many as are on the list. */
export function usualLeague(league: string, begins: string): LeagueSettings {
  return { league, number: null, from: begins, until: begins, comes: usuallyComes };
}

/** A station of which nothing was said has one place, with its usual lanes. */
export function usualStation(test: StationSettings["test"]): StationSettings {
  return {
    test,
    places: 1,
    lanes: definitionOf(test).figures.lanes,
    turnSeconds: null,
    changeOverSeconds: null,
  };
}

/** The settings of a day for which nobody has planned anything. */
export function usualSettings(): PlanSettings {
  return {
    begins: "09:00",
    leagues: [],
    stations: testCodes.map(usualStation),
    judges: null,
    breaks: [],
    middleIsFree: false,
    boundMinutes: usualBound,
  };
}

const span = z.object({ from: z.number(), middle: z.number(), until: z.number() });

/** What was told of a day before it began, as far as it names nobody. Seconds count from the beginning. */
export const toldFigures = z.object({
  /** The time of day at which it was to begin. */
  begins: clock,
  end: span,
  holdsUp: z.enum(testCodes).nullable(),
  waits: z.object({ mean: z.number(), longest: z.number() }),
  /** How many athletes were planned for. */
  athletes: z.int(),
});
export type ToldFigures = z.infer<typeof toldFigures>;
