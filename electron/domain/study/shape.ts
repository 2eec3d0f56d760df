import type { Interval } from "../statistics/interval.ts";

/**
 * What a measuring study repeats: `judges` read the same attempts; at two `visits` the same people are tested again, too
 * soon for training to show.
 */
export const studyKinds = ["judges", "visits"] as const;
export type StudyKind = (typeof studyKinds)[number];

/** Days between two visits that still count as repeats of each other, as for the typical error. */
export const mostDaysApart = 14;
/** Fewest and most series of a study. */
export const [fewestSeries, mostSeries] = [2, 4] as const;
/** Fewest athletes with a reading in every series for any result, and for a word about a judge. Ours, no source. */
export const [leastAthletes, leastForWord] = [3, 5] as const;
/** Most athletes that a study can aim at. */
export const mostAthletes = 1000;

/** An athlete's readings, one for each series in order; null where one is missing. In grains. */
export interface StudyRow {
  readonly athleteId: number;
  readonly values: readonly (number | null)[];
}

/** A table without holes: a row for each athlete, a column for each series; in grains. */
export type Table = readonly (readonly number[])[];

/** Returns the rows that have a reading in every series: the analysis of variance takes no others. */
export function wholeRows(rows: readonly StudyRow[]): number[][] {
  return rows.flatMap(({ values }) => {
    const there = values.filter((value) => value !== null);
    return there.length === values.length ? [there] : [];
  });
}

/** An estimate with its confidence interval. */
export interface Estimated extends Interval {
  readonly value: number;
}
