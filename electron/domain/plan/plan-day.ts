import type { Seed } from "../chance.ts";
import { manyDays, usualCustoms } from "./days.ts";
import type { Draws } from "./draws.ts";
import { beginning, floorOf } from "./floor.ts";
import type { Athlete, Hall, Known } from "./hall.ts";
import { emptyLoads, loadsOf, takeIn } from "./load.ts";
import { type Calculation, within } from "./progress.ts";
import { heldUpBy, reliefsOf } from "./relief.ts";
import { simulate } from "./simulate.ts";
import { spanOf } from "./span.ts";
import type { DayPlan } from "./told.ts";
import { turnsIn, waitsIn } from "./turns.ts";
import { type WaveTimes, wavesFrom, waveTimes } from "./wave-times.ts";

/** Days on which the reliefs of stations are tried. */
const daysOfReliefs = 50;

/**
 * Plans a day before it begins: when it ends, what holds it up, how long people wait, how full stations are, and one day
 * of the middle turn by turn. The same hall, athletes and seed give the same plan.
 * @param days number of simulated days, at least 10
 */
export function* planDay(
  hall: Hall,
  athletes: readonly Athlete[],
  known: readonly Known[],
  seed: Seed,
  days = 200,
): Calculation<DayPlan> {
  const all = yield* within(manyDays(beginning(hall, athletes), known, seed, days), 0, 0.15);
  const floor = floorOf(all.moment, usualCustoms);
  const loads = emptyLoads(all.moment.hall);
  const ends: number[] = [];
  const waves: WaveTimes[] = [];
  for (const day of all.draws) {
    const state = simulate(floor, day);
    ends.push(state.end);
    takeIn(loads, state);
    waves.push(waveTimes(state));
    if (ends.length % 10 === 0) yield 0.15 + (0.6 * ends.length) / days;
  }
  const few = { ...all, draws: all.draws.slice(0, daysOfReliefs) };
  const holdsUp = heldUpBy(yield* within(reliefsOf(few, ends), 0.75, 1));
  const end = spanOf(ends);
  const middle = simulate(floor, dayNearest(end.middle, ends, all.draws));
  return {
    ...{ end, holdsUp },
    waits: waitsIn(middle),
    waves: wavesFrom(athletes, waves),
    stations: loadsOf(loads, days),
    turns: turnsIn(middle),
  };
}

/** Returns the draws of the day whose end is nearest to the wanted one. */
function dayNearest(wanted: number, ends: readonly number[], draws: readonly Draws[]): Draws {
  const off = ends.map((end) => Math.abs(end - wanted));
  const nearest = draws[off.indexOf(Math.min(...off))];
  if (nearest === undefined) throw new RangeError("A plan needs at least one simulated day.");
  return nearest;
}
