import { mean } from "simple-statistics";
import { spreadOfBest } from "./best-of.ts";
import type { ErrorParts } from "./change.ts";
import { type Cell, withinRows } from "./within.ts";

/** A mark in grains, and the number of its calendar day: neighbours are one apart. */
export interface DatedValue {
  readonly day: number;
  readonly value: number;
}

/** One of an athlete's marks of one fingerprint that are repeats of each other: too near for training to show. */
export interface Repeat {
  /** Which of the athlete's marks of that fingerprint it is: 1 for the first ever. */
  readonly visit: number;
  /** In grains. */
  readonly value: number;
}

/** An athlete's last two trials on one day (the first is often a careful one), in grains, and the count of trials. */
export interface RepeatedTrial {
  readonly before: number;
  readonly after: number;
  readonly trials: number;
}

/** A typical error computed from repeats. */
export interface Estimate {
  /** As a multiple of the typical error that it was measured in. */
  readonly amount: number;
  readonly degrees: number;
  /** Number of neighbouring pairs among the repeats. */
  readonly pairs: number;
}

/** Days between two marks that still count as repeats of each other, and the days that all repeats of a run lie in. */
const [nearDays, runDays] = [14, 28];

/**
 * Divides an athlete's marks of one fingerprint, oldest first, into runs of repeats: neighbours at most 14 days apart,
 * the whole of a run at most 28. Marks without another near stand alone and are left out.
 */
export function runsOf(marks: readonly DatedValue[]): Repeat[][] {
  const runs: { first: number; last: number; repeats: Repeat[] }[] = [];
  for (const [index, { day, value }] of marks.entries()) {
    const repeat = { visit: index + 1, value };
    const run = runs.at(-1);
    const near = run !== undefined && day - run.last <= nearDays && day - run.first <= runDays;
    if (near) {
      run.repeats.push(repeat);
      run.last = day;
    } else runs.push({ first: day, last: day, repeats: [repeat] });
  }
  return runs.map(({ repeats }) => repeats).filter((repeats) => repeats.length > 1);
}

/** Visits from this one on count as alike: nobody learns a test for ever. Ours, no source. */
const learnt = 4;

/**
 * Returns the typical error from athletes' repeats, in units of one with the same two parts, so that long and short
 * holds count alike. What a visit shifts for everybody, such as knowing the test, is no part of it. Null where nothing
 * is left over to tell it by.
 */
export function errorOfRepeats(runs: readonly (readonly Repeat[])[], unit: ErrorParts): Estimate | null {
  const rows = runs.map((run) => rowOf(run, unit)).filter((row) => row.length > 1);
  const within = withinRows(rows);
  if (within === null) return null;
  const pairs = rows.reduce((sum, row) => sum + row.length - 1, 0);
  return { amount: Math.sqrt(within.square), degrees: within.degrees, pairs };
}

/** Returns one athlete's repeats in units of the typical error at their mean; none where that is nothing. */
function rowOf(run: readonly Repeat[], { fixed, share }: ErrorParts): Cell[] {
  if (run.length === 0) return [];
  const size = Math.hypot(fixed, share * mean(run.map(({ value }) => value)));
  return size === 0 ? [] : run.map(({ visit, value }) => cellOf(visit, value / size));
}

function cellOf(visit: number, value: number): Cell {
  return { column: Math.min(visit, learnt), value };
}

/** Returns what trials of one day show at least, scaled down to the variation of the best of all trials. */
export function errorOfTrials(trials: readonly RepeatedTrial[], unit: ErrorParts): Estimate | null {
  const runs = trials.map(({ before, after, trials: count }) => [
    { visit: 1, value: before },
    { visit: 2, value: before + (after - before) * spreadOfBest(count) },
  ]);
  return errorOfRepeats(runs, unit);
}
