import { mean } from "simple-statistics";
import { learningVariance, steps } from "./learning.ts";
import type { Shared } from "./shared.ts";

/** A change since an earlier mark, as what is common to several athletes moves it. */
export interface SharedChange {
  /** The typical error at both marks, in grains. */
  readonly size: number;
  /** The day of the earlier mark. */
  readonly since: string;
  /** Number of visits before the newer mark. */
  readonly visits: number;
}

/**
 * By how many grains a mean of changes moves where a cause moves marks by one typical error: each day, the one at hand too,
 * and each step of the learning.
 */
export interface Loads {
  readonly days: ReadonlyMap<string, number>;
  readonly steps: readonly number[];
}

/** The day at hand among the days. */
const today = "today";

export function loadsOf(changes: readonly SharedChange[]): Loads {
  const part = (some: readonly SharedChange[]) =>
    some.reduce((sum, { size }) => sum + size, 0) / changes.length;
  const before = [...Map.groupBy(changes, ({ since }) => since)];
  return {
    days: new Map([[today, part(changes)], ...before.map(([since, some]) => [since, -part(some)] as const)]),
    steps: Array.from({ length: steps }, (_, step) =>
      part(changes.filter(({ visits }) => visits === step + 1)),
    ),
  };
}

/** Returns what moves the difference of two means. */
export function loadsBetween(one: Loads, other: Loads): Loads {
  const days = [...new Set([...one.days.keys(), ...other.days.keys()])];
  return {
    days: new Map(days.map((day) => [day, (one.days.get(day) ?? 0) - (other.days.get(day) ?? 0)])),
    steps: one.steps.map((load, step) => load - (other.steps[step] ?? 0)),
  };
}

/**
 * Returns the variance of a mean in square grains that comes from what days move, as large as it may well be, and from how
 * surely the steps of the learning are known. Where all came in step, what a past day moved was taken for learning: so the
 * errors of both are added, and not their squares.
 */
export function commonVariance(loads: Loads, { hall, learning }: Shared): number {
  const before = [...loads.days].filter(([day]) => day !== today);
  const ofPast = hall.atMost * before.reduce((sum, [, load]) => sum + load ** 2, 0);
  const past = Math.sqrt(ofPast) + Math.sqrt(learningVariance(loads.steps, learning));
  return hall.atMost * (loads.days.get(today) ?? 0) ** 2 + past ** 2;
}

/** Returns how much of the sample variance of changes comes from athletes who were compared with other days or visits. */
export function varianceApart(changes: readonly SharedChange[], shared: Shared): number {
  const each = mean(changes.map((change) => commonVariance(loadsOf([change]), shared)));
  const ofMean = commonVariance(loadsOf(changes), shared);
  return ((each - ofMean) * changes.length) / (changes.length - 1);
}
