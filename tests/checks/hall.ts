import { blend } from "../../electron/domain/statistics/blend.ts";
import { assumedDrift, driftOf } from "../../electron/domain/statistics/drift.ts";
import { withoutLearning } from "../../electron/domain/statistics/learning.ts";
import { type Dated, numbered } from "../../electron/domain/statistics/news.ts";
import { errorOfRepeats, runsOf } from "../../electron/domain/statistics/repeats.ts";
import { sharedOf } from "../../electron/domain/statistics/shared.ts";
import type { Variation } from "../../electron/domain/statistics/variation.ts";

/** The true typical error of the invented hall, in grains: so many that rounding plays no part. */
export const truth = 20;

/** Test days fourteen weeks apart. */
export const days = [
  "2025-01-04",
  "2025-04-12",
  "2025-07-19",
  "2025-10-25",
  "2026-01-31",
  "2026-05-09",
  "2026-08-15",
];

export const start = { fixed: truth, share: 0, degrees: 2, assumed: true, pairs: 0 };

/** Somebody's marks on test days, by what they are good for on each: their own level and what `moved` adds to it. */
export function marksOf(moved: readonly number[], draw: () => number): Dated[] {
  const own = 1000 + 3 * truth * draw();
  return moved.map((more, at) => ({ date: days[at] ?? "", value: own + truth * (more + draw()) }));
}

/** What a hall knows of its days after six of them that moved everybody by so many typical errors (SD). */
export function knownDays(moved: number, draw: () => number): Variation["hall"] {
  const shifts = Array.from({ length: 6 }, () => (moved === 0 ? 0 : moved * draw()));
  const series = Array.from({ length: 60 }, () => numbered(marksOf(shifts, draw)));
  return sharedOf(series, start, assumedDrift.perWeek).hall;
}

/**
 * What a hall knows from so many pairs a week apart, and of what moves everybody from its athletes' marks on test days: all but
 * how much athletes change, which takes most of the time and is asked by no interval of a mean.
 */
export function knownTogether(
  pairs: number,
  athletes: readonly (readonly Dated[])[],
  draw: () => number,
): Omit<Variation, "drift"> {
  const runs = Array.from({ length: pairs }, () => {
    const own = 1000 + 3 * truth * draw();
    return [0, 7].map((day) => ({ day, value: own + truth * draw() }));
  }).flatMap(runsOf);
  const { error } = blend(start, errorOfRepeats(runs, start), null);
  return { error, ...sharedOf(athletes.map(numbered), error, assumedDrift.perWeek) };
}

/** What a hall knows from so many pairs a week apart and from its athletes' marks on test days. */
export function known(pairs: number, athletes: readonly (readonly Dated[])[], draw: () => number): Variation {
  const together = knownTogether(pairs, athletes, draw);
  const { error, learning } = together;
  const drift = driftOf(
    athletes.map((marks) => withoutLearning(numbered(marks), learning, error)),
    error,
  );
  return { ...together, drift };
}
