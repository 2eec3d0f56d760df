import type { TestCode } from "../tests/registry.ts";
import { changed } from "./change.ts";
import { endsOf, type ManyDays } from "./days.ts";
import type { Moment } from "./hall.ts";
import { type Calculation, within } from "./progress.ts";
import { meanOfAll } from "./span.ts";

/** A relief that ends the day earlier by less than this on average holds nothing up, in seconds. Ours, no source. */
const leastHeldUp = 60;

/**
 * Returns the station that holds the day up: with one more place there, and somebody to judge at it, the day would end
 * earliest on average over the simulated days. Null when no station's relief brings a minute.
 * @param ends of the same days without any relief
 */
export function* heldUpBy(
  { moment, draws }: ManyDays,
  ends: readonly number[],
): Calculation<TestCode | null> {
  const tests = moment.hall.stations.map(({ test }) => test);
  let most: { test: TestCode | null; saved: number } = { test: null, saved: leastHeldUp };
  for (const [index, test] of tests.entries()) {
    const parts = [index / tests.length, (index + 1) / tests.length] as const;
    const relieved = yield* within(endsOf(withRelief(moment, test), draws), ...parts);
    const saved = meanOfAll(ends) - meanOfAll(relieved);
    if (saved > most.saved) most = { test, saved };
  }
  return most.test;
}

function withRelief(moment: Moment, test: TestCode): Moment {
  const judged = changed(moment, { kind: "judge" }) ?? moment;
  return changed(judged, { kind: "place", test }) ?? judged;
}
