import type { DatedValue } from "./repeats.ts";

/**
 * What an athlete is good for, by all marks of one fingerprint up to a day: a local level, which each mark shows with
 * the test's own error and which drifts from week to week.
 * Source: Durbin & Koopman 2001, Time Series Analysis by State Space Methods, chapter 2; the first mark begins it.
 */
export interface Level {
  /** In grains. */
  readonly value: number;
  /** How far the truth may lie from it, as a variance in squares of the typical error: 1 after one mark. */
  readonly variance: number;
  /** What the marks' own errors alone make it vary by, of somebody who stays the same, in the same squares. */
  readonly alone: number;
  /** The newest day behind it. */
  readonly day: number;
}

/** A mark as the level foretold it, beside what came. */
export interface Foretold {
  readonly before: Level;
  readonly mark: DatedValue;
  /** The variance of what comes less what was foretold, in squares of the typical error. */
  readonly variance: number;
}

const weeksBetween = (from: number, to: number) => (to - from) / 7;

/**
 * Goes through an athlete's marks, oldest first, and says of each but the first what the ones before foretold.
 * @param drift how much the variance of what somebody is good for grows in a week, in squares of the typical error
 * @param noise the variance of one mark, in the same squares: more than 1 where whole days move everybody
 */
export function foretell(marks: readonly DatedValue[], drift: number, noise = 1): Foretold[] {
  let level: Level | null = null;
  return marks.flatMap((mark) => {
    const before = level;
    level = after(before, mark, drift, noise);
    if (before === null) return [];
    const variance = before.variance + drift * weeksBetween(before.day, mark.day) + noise;
    return [{ before, mark, variance }];
  });
}

/** Returns the level after all these marks, oldest first; null without any. See {@link foretell}. */
export function levelOf(marks: readonly DatedValue[], drift: number, noise = 1): Level | null {
  return marks.reduce<Level | null>((level, mark) => after(level, mark, drift, noise), null);
}

/** Takes one more mark into a level: the surer the level was, the less the mark moves it. */
function after(before: Level | null, { day, value }: DatedValue, drift: number, noise: number): Level {
  if (before === null) return { value, variance: noise, alone: 1, day };
  const open = before.variance + drift * weeksBetween(before.day, day);
  const weight = open / (open + noise);
  const alone = (1 - weight) ** 2 * before.alone + weight ** 2;
  return { value: before.value + weight * (value - before.value), variance: weight * noise, alone, day };
}

/** A speed in grains a week; positive where marks grow, whichever way the test counts. */
export interface Speed {
  readonly perWeek: number;
  /** Its variance, in squares of the typical error. */
  readonly variance: number;
}

/** Fewest marks and weeks that a speed is told of: two marks are a change, and days are no training. Ours, no source. */
const [leastMarks, leastWeeks] = [3, 8];

/**
 * Returns how fast a level moves over all of the marks: the steady part of a level that also drifts, by generalised
 * least squares. What the weeks foretell goes through the same filter as the marks (de Jong 1991, Annals of Statistics
 * 19; from memory). Null with too few marks or weeks.
 */
export function speedOf(marks: readonly DatedValue[], drift: number, noise = 1): Speed | null {
  const [first, last] = [marks[0], marks.at(-1)];
  if (first === undefined || last === undefined || marks.length < leastMarks) return null;
  if (weeksBetween(first.day, last.day) < leastWeeks) return null;
  const weeks = foretell(
    marks.map(({ day }) => ({ day, value: weeksBetween(first.day, day) })),
    drift,
    noise,
  );
  let [both, square] = [0, 0];
  for (const [at, { before, mark, variance }] of foretell(marks, drift, noise).entries()) {
    const passed = (weeks[at]?.mark.value ?? 0) - (weeks[at]?.before.value ?? 0);
    both += (passed * (mark.value - before.value)) / variance;
    square += passed ** 2 / variance;
  }
  return { perWeek: both / square, variance: 1 / square };
}
