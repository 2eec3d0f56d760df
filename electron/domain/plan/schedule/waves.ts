import type { Seed } from "../../chance.ts";
import { manyDays, usualCustoms } from "../days.ts";
import { beginning, floorOf } from "../floor.ts";
import type { Athlete, Break, Hall, Known } from "../hall.ts";
import { type Calculation, within } from "../progress.ts";
import { simulate } from "../simulate.ts";
import { meanOfAll } from "../span.ts";
import type { Wave } from "../told.ts";
import { waitsIn } from "../turns.ts";
import { wavesFrom, waveTimes } from "../wave-times.ts";
import { type Arrivals, arrivalsOf, leaguesTogether } from "./arrivals.ts";

/** What waves are worked out from, besides a hall and its athletes. */
export interface WaveOptions {
  readonly known: readonly Known[];
  readonly seed: Seed;
  /** When each league can be there: from its first to its last moment. A league that is not in it comes as it is listed. */
  readonly possible: ReadonlyMap<string, Break>;
  /** Number of simulated days. */
  readonly days?: number;
  /** True if all of a league are to be there at one time, that of its first wave: it is all that a plan's settings hold. */
  readonly together?: boolean;
}

/** Waves, and what they bring. */
export interface Waves {
  readonly waves: readonly Wave[];
  /** The same athletes, each to be there with their wave. */
  readonly athletes: readonly Athlete[];
  /** On average, in seconds: by when the day ends earlier than with everybody as listed, and how long they wait in both. */
  readonly saved: number;
  readonly wait: number;
  readonly waitAsListed: number;
}

/** A minute by which the day ends sooner is worth as much as so many that each athlete waits less over all tests. Ours. */
const waitsForAnEnd = 2;

/** What one way to arrive comes to on the simulated days. */
interface Outcome {
  readonly athletes: readonly Athlete[];
  readonly end: number;
  readonly wait: number;
  readonly waves: readonly Wave[];
}

/**
 * Works out in which order and when leagues are to be there, each together: the day ends no later than with everybody as
 * listed, and of the ways that do, it is the best for the end and the waits. All ways are tried on the same simulated days.
 */
export function* wavesOf(
  hall: Hall,
  athletes: readonly Athlete[],
  { known, seed, possible, days = 30, together = false }: WaveOptions,
): Calculation<Waves> {
  const all = yield* within(manyDays(beginning(hall, athletes), known, seed, days), 0, 0.1);
  const inWaves = arrivalsOf(all.moment.hall, athletes, possible);
  const ways: Arrivals[] = [athletes, ...(together ? inWaves.map(leaguesTogether) : inWaves)];
  const outcomes: Outcome[] = [];
  for (const way of ways) {
    const floor = floorOf({ ...all.moment, athletes: way }, usualCustoms);
    const states = all.draws.map((draws) => simulate(floor, draws));
    outcomes.push({
      athletes: way,
      end: meanOfAll(states.map(({ end }) => end)),
      wait: meanOfAll(states.map((state) => waitsIn(state).mean)),
      waves: wavesFrom(way, states.map(waveTimes)),
    });
    yield 0.1 + (0.9 * outcomes.length) / ways.length;
  }
  return told(outcomes, meanOfAll(athletes.map(({ left }) => left.length)));
}

/** @param tests number of tests of an athlete, on average */
function told(outcomes: readonly Outcome[], tests: number): Waves {
  const [listed] = outcomes;
  const worth = ({ end, wait }: Outcome) => end + (wait * tests) / waitsForAnEnd;
  const best = outcomes
    .filter(({ end }) => end <= (listed?.end ?? end))
    .reduce((one, other) => (worth(other) < worth(one) ? other : one));
  return {
    ...{ waves: best.waves, athletes: best.athletes, wait: best.wait },
    saved: (listed?.end ?? best.end) - best.end,
    waitAsListed: listed?.wait ?? best.wait,
  };
}
