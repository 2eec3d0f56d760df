import type { TestCode } from "../tests/registry.ts";
import { typicalError } from "./change.ts";
import { learntSince } from "./learning.ts";
import { type Level, levelOf } from "./level.ts";
import type { DatedValue } from "./repeats.ts";
import type { Variation } from "./variation.ts";

/** What an athlete's earlier marks let one expect of the next one, if the athlete stays the same. */
export interface Foreseen {
  /** The level that the marks show. */
  readonly level: Level;
  /** The expected mark in grains: the level, and what the visit gains by knowing the test. */
  readonly value: number;
  /**
   * How far a mark without any error of its own may lie from it, as a variance in squares of the typical error: the
   * level's, that of the learning, and what the day moves.
   */
  readonly variance: number;
  /** What knowing the test adds, in grains, and its standard error. */
  readonly learnt: number;
  readonly learntError: number;
}

/** Returns what earlier marks of one fingerprint, oldest first, foretell of the next; null without any. */
export function foresee(
  test: TestCode,
  marks: readonly DatedValue[],
  { error, drift, learning, hall }: Variation,
): Foreseen | null {
  const noise = 1 + hall.variance;
  const level = levelOf(marks, drift.perWeek, noise);
  if (level === null) return null;
  const learnt = learntSince(marks, learning, drift.perWeek, noise);
  const size = typicalError(test, level.value, error);
  return {
    level,
    value: level.value + learnt.by * size,
    variance: level.variance + hall.variance + learnt.variance,
    learnt: learnt.by * size,
    learntError: Math.sqrt(learnt.variance) * size,
  };
}
