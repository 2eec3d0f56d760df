import { spreadOfBest } from "../../domain/statistics/best-of.ts";
import { blend } from "../../domain/statistics/blend.ts";
import { startingTypicalErrors, type TypicalError } from "../../domain/statistics/change.ts";
import {
  type Estimate,
  type Pair,
  typicalErrorOf,
  typicalShareOf,
} from "../../domain/statistics/reliability.ts";
import { ofEachTest, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { cachedUntilWrite } from "../../store/connection/stamp.ts";
import { type RepeatedTrial, repeatedMarks, repeatedTrials } from "../../store/reads/repeats.ts";

/** A store's noise of one test; estimates in the kind of its typical error (grains, or a share). */
export interface TestNoise {
  readonly error: TypicalError;
  /** Degrees of freedom behind the amount in use, including the start's. */
  readonly degrees: number;
  /** Pairs of marks of one athlete and fingerprint at most 14 days apart, in grains. */
  readonly repeats: readonly Pair[];
  /** Their estimate; null with fewer than two. */
  readonly own: Estimate | null;
  /** The least noise of a mark by trials within a day; null for tests without repeated trials. */
  readonly trials: Estimate | null;
  /** True if the trials raised the amount above that of start and pairs. */
  readonly raised: boolean;
}

export type Noise = Readonly<Record<TestCode, TestNoise>>;

/** Computes each test's noise from the store's marks, leaving out one day (0: none). */
export const noiseOf: (db: ReadableDb, exceptDayId: number) => Noise = cachedUntilWrite(read);

function read(db: ReadableDb, exceptDayId: number): Noise {
  const repeats = Map.groupBy(repeatedMarks(db, exceptDayId), ({ test }) => test);
  return ofEachTest((test) => {
    const pairs = (repeats.get(test) ?? []).map(({ before, after }): Pair => [before, after]);
    const trials = repeatedTrials(db, test, exceptDayId).map(bestOfTrials);
    return noiseOfTest(test, pairs, trials);
  });
}

/** Narrows a pair of single trials to the difference of bests of all trials: closer, in the same direction. */
function bestOfTrials({ before, after, trials }: RepeatedTrial): Pair {
  return [before, before * (after / before) ** spreadOfBest(trials)];
}

function noiseOfTest(test: TestCode, repeats: readonly Pair[], ofOneDay: readonly Pair[]): TestNoise {
  const { kind, starting } = startingTypicalErrors[test];
  const estimate = kind === "grains" ? typicalErrorOf : typicalShareOf;
  const [own, trials] = [estimate(repeats), estimate(ofOneDay)];
  const { amount, degrees, raised } = blend(starting, own, trials);
  const error = { kind, amount, assumed: own === null, pairs: own?.pairs ?? 0, starting };
  return { error, degrees, repeats, own, trials, raised };
}
