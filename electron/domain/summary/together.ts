import { mean, sampleStandardDeviation } from "simple-statistics";
import { holdTogether } from "../statistics/holm.ts";
import { leastTogether } from "../statistics/shared.ts";
import { quantileOfT, shareOfT } from "../statistics/student.ts";
import { protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import type { SummaryMark } from "./day.ts";

/** How far everybody moved together in one test, in grains (a mean: seldom whole); positive is better. */
export interface Together {
  readonly test: TestCode;
  readonly by: number;
  /** The interval that holds the common move 95 times in 100. */
  readonly low: number;
  readonly high: number;
  readonly athletes: number;
}

interface Found extends Together {
  /** The chance that athletes who did not move together show at least as much. */
  readonly chance: number;
}

/** The largest chance that any test of a day is named although nobody moved together. */
const errorRate = 0.05;

/**
 * Returns the tests of a day in which everybody moved by more than chance makes, all five looked at together (Holm):
 * the mean of what athletes moved beyond their own levels and beyond knowing the test, with Student's t. It is for whoever
 * looks after floor, beat, judges and practice, and changes no verdict.
 */
export function movedTogether(marks: readonly SummaryMark[]): Together[] {
  const found = testCodes.flatMap((test) => togetherIn(test, marks) ?? []);
  const held = holdTogether(
    found.map(({ chance }) => chance),
    errorRate,
  );
  return found.filter((_each, at) => held[at]).map(({ chance: _chance, ...moved }) => moved);
}

/** Returns how everybody moved in one test; null with too few athletes, or where nothing varies. */
function togetherIn(test: TestCode, marks: readonly SummaryMark[]): Found | null {
  const judged = marks.flatMap(({ test: of, news }) =>
    of !== test || news === null || news.beyond === null || news.learntError === null
      ? []
      : [{ beyond: news.beyond, learntError: news.learntError }],
  );
  if (judged.length < leastTogether) return null;
  const moves = judged.map(({ beyond }) => beyond);
  const by = mean(moves);
  // What is not known of the learning is the same for all of them.
  const error = Math.hypot(
    sampleStandardDeviation(moves) / Math.sqrt(moves.length),
    mean(judged.map(({ learntError }) => learntError)),
  );
  if (error === 0) return null;
  const degrees = moves.length - 1;
  const reach = quantileOfT(0.975, degrees) * error;
  const tenth = tenthOf(test);
  const shown = (grains: number) => Math.round(grains / tenth) * tenth;
  return {
    ...{ test, by: shown(by), low: shown(by - reach), high: shown(by + reach), athletes: moves.length },
    chance: 2 * (1 - shareOfT(Math.abs(by) / error, degrees)),
  };
}

/** Returns a tenth of a test's unit in grains; of a second, a grain where there is none smaller. */
function tenthOf(test: TestCode): number {
  const { unit, perUnit } = protocolOf(test).grain;
  return unit === "s" ? Math.max(1, perUnit / 10) : perUnit / 10;
}
