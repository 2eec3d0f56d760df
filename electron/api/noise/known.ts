import { blend } from "../../domain/statistics/blend.ts";
import { startingTypicalErrors } from "../../domain/statistics/change.ts";
import { assumedDrift, driftOf } from "../../domain/statistics/drift.ts";
import { withoutLearning } from "../../domain/statistics/learning.ts";
import {
  type DatedValue,
  type Estimate,
  errorOfRepeats,
  errorOfTrials,
  type Repeat,
  runsOf,
} from "../../domain/statistics/repeats.ts";
import { sharedOf } from "../../domain/statistics/shared.ts";
import type { Variation } from "../../domain/statistics/variation.ts";
import { ofEachTest, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { keptApartFromDay } from "../../store/connection/stamp.ts";
import { allOwnMarks, type OwnMarks, repeatedTrials } from "../../store/reads/repeats.ts";

/** Two marks of one athlete, the earlier first, in grains. */
type Pair = readonly [before: number, after: number];

/** A store's noise of one test. Estimates are multiples of the starting typical error. */
export interface TestNoise extends Variation {
  /** The estimate from the store's own repeats; null where they are too few for one. */
  readonly own: Estimate | null;
  /** The least noise of a mark by trials within a day; null for tests without repeated trials. */
  readonly trials: (Estimate & { readonly athletes: number }) | null;
  /** True if the trials raised the amount above that of start and repeats. */
  readonly raised: boolean;
  /** First repeats of athletes, one pair each, all of the fingerprint that has most of them. */
  readonly alike: readonly Pair[];
}

export type Noise = Readonly<Record<TestCode, TestNoise>>;

/** Computes each test's noise from the store's marks, leaving out one day (0: none). */
export const noiseOf: (db: ReadableDb, exceptDayId: number) => Noise = keptApartFromDay(read);

function read(db: ReadableDb, exceptDayId: number): Noise {
  const series = Map.groupBy(allOwnMarks(db, exceptDayId), ({ test }) => test);
  return ofEachTest((test) => {
    const runs = (series.get(test) ?? []).map((own) => ({ ...own, runs: runsOf(own.marks) }));
    const trials = repeatedTrials(db, test, exceptDayId);
    const ofOneDay = errorOfTrials(trials, startingTypicalErrors[test]);
    return noiseOfTest(test, runs, ofOneDay === null ? null : { ...ofOneDay, athletes: trials.length });
  });
}

interface OwnRuns extends OwnMarks {
  readonly runs: readonly (readonly Repeat[])[];
}

function noiseOfTest(test: TestCode, series: readonly OwnRuns[], trials: TestNoise["trials"]): TestNoise {
  const start = startingTypicalErrors[test];
  const own = errorOfRepeats(
    series.flatMap(({ runs }) => runs),
    start,
  );
  const { error, raised } = blend(start, own, trials);
  const { learning, hall } = sharedOf(oneEach(series), error, assumedDrift.perWeek);
  const drift = driftOf(
    series.map(({ marks }) => withoutLearning(marks, learning, error)),
    error,
  );
  return { error, drift, learning, hall, own, trials, raised, alike: alikeIn(series) };
}

/** Returns the longest series of each athlete: who has learnt the test in one way is no beginner in another. */
function oneEach(series: readonly OwnRuns[]): (readonly DatedValue[])[] {
  return [...Map.groupBy(series, ({ athleteId }) => athleteId).values()].map(
    (own) => own.map(({ marks }) => marks).toSorted((a, b) => b.length - a.length)[0] ?? [],
  );
}

/**
 * Returns one pair for each athlete, all of one fingerprint: an intraclass correlation needs athletes as rows, and full
 * and knee push-ups in one table would pass for differences between athletes.
 */
function alikeIn(series: readonly OwnRuns[]): Pair[] {
  const repeated = series.filter(({ runs }) => runs.length > 0);
  const groups = [...Map.groupBy(repeated, ({ fingerprint }) => fingerprint).values()];
  const [largest = []] = groups.toSorted((a, b) => b.length - a.length);
  return largest.flatMap(({ runs }): Pair[] => {
    const [before, after] = runs[0] ?? [];
    return before === undefined || after === undefined ? [] : [[before.value, after.value]];
  });
}
