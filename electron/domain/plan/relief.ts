import type { TestCode } from "../tests/registry.ts";
import { changed } from "./change.ts";
import { endsOf, type ManyDays } from "./days.ts";
import type { Moment } from "./hall.ts";
import { type Calculation, within } from "./progress.ts";
import { meanOfAll } from "./span.ts";

/** A relief that ends the day earlier by less than this on average holds nothing up, in seconds. Ours, no source. */
const leastHeldUp = 60;

/** What one more place at a station, and somebody to judge at it, saves on each simulated day, in seconds. */
export interface Relief {
  readonly test: TestCode;
  readonly saved: readonly number[];
}

/** Tries the relief of each station. @param ends of the same days without any relief */
export function* reliefsOf({ moment, draws }: ManyDays, ends: readonly number[]): Calculation<Relief[]> {
  const tests = moment.hall.stations.map(({ test }) => test);
  const reliefs: Relief[] = [];
  for (const [index, test] of tests.entries()) {
    const parts = [index / tests.length, (index + 1) / tests.length] as const;
    const relieved = yield* within(endsOf(withRelief(moment, test), draws), ...parts);
    reliefs.push({ test, saved: relieved.map((end, day) => (ends[day] ?? end) - end) });
  }
  return reliefs;
}

/**
 * Returns the station that holds the day up: whose relief would end it earliest on average. Null when no station's relief
 * brings a minute.
 */
export function heldUpBy(reliefs: readonly Relief[]): TestCode | null {
  const means = reliefs.map(({ test, saved }) => ({ test, mean: meanOfAll(saved) }));
  const most = means.reduce((best, each) => (each.mean > best.mean ? each : best), {
    test: null,
    mean: leastHeldUp,
  } as {
    test: TestCode | null;
    mean: number;
  });
  return most.test;
}

function withRelief(moment: Moment, test: TestCode): Moment {
  const judged = changed(moment, { kind: "judge" }) ?? moment;
  return changed(judged, { kind: "place", test }) ?? judged;
}
