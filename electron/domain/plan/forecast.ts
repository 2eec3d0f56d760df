import type { Seed } from "../chance.ts";
import { endsOf, type ManyDays, manyDays } from "./days.ts";
import type { Known, Moment } from "./hall.ts";
import { type Calculation, within } from "./progress.ts";
import { heldUpBy, reliefsOf } from "./relief.ts";
import { spanOf } from "./span.ts";
import { suggestionFor } from "./suggestion.ts";
import type { Forecast } from "./told.ts";

/** Days on which reliefs and changes are tried: differences on the same days need fewer of them. */
const daysOfChanges = 30;

/**
 * Forecasts the rest of a day: when it ends, what holds it up, and one change that would help. The span holds 8 of 10
 * simulated days, which differ by all that is not known: how long stations really take today, who comes, who is slow.
 * The same moment and seed give the same forecast.
 * @param days number of simulated days, at least 10
 */
export function* forecastOf(
  moment: Moment,
  known: readonly Known[],
  seed: Seed,
  days = 200,
): Calculation<Forecast> {
  const all = yield* within(manyDays(moment, known, seed, days), 0, 0.15);
  const ends = yield* within(endsOf(all.moment, all.draws), 0.15, 0.4);
  const fewer: ManyDays = { ...all, draws: all.draws.slice(0, daysOfChanges) };
  const reliefs = yield* within(reliefsOf(fewer, ends), 0.4, 0.6);
  const suggestion = yield* within(suggestionFor(all, ends, daysOfChanges, reliefs), 0.6, 1);
  return { end: spanOf(ends), holdsUp: heldUpBy(reliefs), suggestion };
}
