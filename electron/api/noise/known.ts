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

/** What a store knows of the noise of one test; estimates in the kind of its typical error (grains, or a share). */
export interface TestNoise {
  readonly error: TypicalError;
  /** Degrees of freedom behind the amount that is used, the start's among them. */
  readonly degrees: number;
  /** Marks of one athlete and fingerprint at most 14 days apart, in grains. */
  readonly repeats: readonly Pair[];
  /** What they come to; null with fewer than two. */
  readonly own: Estimate | null;
  /** The least noise of a mark that trials within a day allow; null for tests without repeated trials. */
  readonly trials: Estimate | null;
  /** Whether the trials made the amount larger than start and pairs. */
  readonly raised: boolean;
}

export type Noise = Readonly<Record<TestCode, TestNoise>>;

/** The noise of each test as the store's marks show it, leaving one day (0: none) out. */
export const noiseOf: (db: ReadableDb, exceptDayId: number) => Noise = cachedUntilWrite(read);

function read(db: ReadableDb, exceptDayId: number): Noise {
  const repeats = Map.groupBy(repeatedMarks(db, exceptDayId), ({ test }) => test);
  return ofEachTest((test) => {
    const pairs = (repeats.get(test) ?? []).map(({ before, after }): Pair => [before, after]);
    const trials = repeatedTrials(db, test, exceptDayId).map(bestOfTrials);
    return noiseOfTest(test, pairs, trials);
  });
}

/** A pair of single trials as the best of all trials would differ: closer together, and in the same direction. */
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
