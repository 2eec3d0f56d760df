import { protocolOf, type TestCode } from "../tests/registry.ts";
import {
  type Change,
  chanceAlone,
  gain,
  spreadsOf,
  typicalError,
  type Verdict,
  verdictOn,
} from "./change.ts";
import { chanceReal } from "./drift.ts";
import { type Foreseen, foresee } from "./foresee.ts";
import type { DatedValue } from "./repeats.ts";
import { type Standing, standingOf } from "./standing.ts";
import { startingVariations, type Variation } from "./variation.ts";

/** A complete mark's place in the athlete's own history; all values and gains in the test's grains. */
export interface MarkNews {
  readonly standing: Standing;
  /** Number of marks before it behind the level. */
  readonly earlier: number;
  /** Best mark before this one; null for a first mark. */
  readonly bestBefore: number | null;
  /** Improvement over the best before; positive is better, whichever way the test counts. */
  readonly gainOverBest: number | null;
  /** The mark of the last test. */
  readonly previous: number | null;
  readonly previousDate: string | null;
  /** The athlete's level by all marks before, as it is told; of one mark, that mark. */
  readonly level: number | null;
  /** Improvement over that level. */
  readonly change: number | null;
  /** What knowing the test adds to such a change, positive where it is better, and its standard error. */
  readonly learnt: number | null;
  readonly learntError: number | null;
  /** The change without that, which is what the verdict and the chances judge. */
  readonly beyond: number | null;
  /** The verdict on that change: how often it would be wrong for somebody who stayed the same. */
  readonly verdict: Verdict | null;
  /** The chance that somebody who stayed the same changes at least as much, for better or for worse. */
  readonly byChance: number | null;
  /** The chance, from 0.5 to 1, that the change is a true one, by how much athletes really change. */
  readonly chanceReal: number | null;
  /** The judged change beside what it varies by: for what is said of everybody's changes together. */
  readonly moved: Moved | null;
}

/** A judged change in typical errors; positive is better. */
export interface Moved {
  readonly by: number;
  /** The standard deviation that it was judged by: that of somebody who stayed the same. */
  readonly judged: number;
  /** The part of that which is this athlete's own: without what days and knowing the test may have moved for all. */
  readonly alone: number;
}

/** What is said of a change that nothing can be said of. */
export const unjudged = {
  level: null,
  change: null,
  learnt: null,
  learntError: null,
  beyond: null,
  verdict: null,
  byChance: null,
  chanceReal: null,
  moved: null,
};

const firstMark: MarkNews = {
  standing: "first",
  earlier: 0,
  bestBefore: null,
  gainOverBest: null,
  previous: null,
  previousDate: null,
  ...unjudged,
};

/** A mark in grains on an ISO 8601 day. */
export interface Dated {
  readonly date: string;
  readonly value: number;
}

/** Returns marks by the number of their calendar day. */
export function numbered(marks: readonly Dated[]): DatedValue[] {
  return marks.map(({ date, value }) => ({ day: Date.parse(`${date}T00:00:00Z`) / 86_400_000, value }));
}

/**
 * Compares a mark with the same athlete's earlier marks of the same protocol fingerprint, oldest first; `variation` is
 * what judges the change, and `alike` are those earlier marks that make the level.
 */
export function newsOf(
  test: TestCode,
  mark: Dated,
  earlier: readonly Dated[],
  variation: Variation = startingVariations[test],
  alike: readonly Dated[] = earlier,
): MarkNews {
  const last = earlier.at(-1);
  if (last === undefined) return firstMark;
  const foreseen = foresee(test, numbered(alike), variation);
  const { better, equalWithin } = protocolOf(test);
  const values = earlier.map(({ value }) => value);
  const bestBefore = better === "higher" ? Math.max(...values) : Math.min(...values);
  return {
    standing: standingOf(better, mark.value, values, equalWithin),
    earlier: alike.length,
    bestBefore,
    gainOverBest: gain(better, bestBefore, mark.value),
    previous: last.value,
    previousDate: last.date,
    ...(foreseen === null ? unjudged : judged(test, foreseen, mark, variation)),
  };
}

/**
 * Judges a mark against what was foreseen. The word asks nothing of how much athletes change, the chance does: so the
 * first holds for everybody who stayed the same, and the second for what is mostly so.
 */
function judged(test: TestCode, foreseen: Foreseen, mark: Dated, { error, drift }: Variation) {
  const { level, learnt, learntError, variance } = foreseen;
  const { better } = protocolOf(test);
  const change = changeFrom(test, foreseen, mark.value, error);
  const spread = Math.sqrt(variance + 1);
  const [{ day = level.day } = {}] = numbered([mark]);
  const shown = levelShown(test, level.value);
  return {
    level: shown,
    change: gain(better, shown, mark.value),
    learnt: gain(better, 0, learnt),
    learntError,
    beyond: change.gain,
    verdict: verdictOn(change),
    byChance: chanceAlone(change),
    chanceReal: chanceReal(spreadsOf(change), variance + 1, (day - level.day) / 7, drift),
    moved: { by: spreadsOf(change) * spread, judged: spread, alone: Math.sqrt(1 + level.alone) },
  };
}

/**
 * Returns a level as it is told, in grains: a whole number of grains and of tenths of the unit. A level by one mark is
 * that mark, whatever it was read in.
 */
export function levelShown(test: TestCode, level: number): number {
  if (Number.isInteger(level)) return level;
  const step = Math.max(1, Math.round(protocolOf(test).grain.perUnit / 10));
  return Math.round(level / step) * step;
}

/** Returns the change from what was foreseen to a mark; the typical error is taken at the mean of both. */
function changeFrom(
  test: TestCode,
  { value: from, variance }: Foreseen,
  to: number,
  error: Variation["error"],
): Change {
  const size = typicalError(test, (from + to) / 2, error);
  return { gain: gain(protocolOf(test).better, from, to), spread: size * Math.sqrt(variance + 1), error };
}
