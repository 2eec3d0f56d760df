import jstat from "jstat";
import { windowWeeks } from "../cards/window.ts";
import { type ErrorParts, errorAt } from "./change.ts";
import { assumedHall, type HallShift } from "./hall.ts";
import { assumedLearning, isAfter, type Learning, steps } from "./learning.ts";
import { foretell } from "./level.ts";
import type { DatedValue } from "./repeats.ts";

/** What moves athletes together: knowing a test, and whole days. */
export interface Shared {
  readonly learning: Learning;
  readonly hall: HallShift;
}

/**
 * Fewest athletes of whom anything is said together, such as a step of the learning, a day of the hall or a league's change:
 * of fewer, chance and single athletes decide. Ours, no source.
 */
export const leastTogether = 8;

/**
 * What is assumed before any mark is seen, as SDs in typical errors: what each step of the learning gains, and what
 * everybody gains by training between two tests. Learning slows down. Ours, no source.
 */
const likelySteps = [1, 0.3, 0.15];
const likelyTraining = { sd: 0.3, weeks: (windowWeeks.from + windowWeeks.until) / 2 };

/** The variances between days that are weighed, by a factor of 4.5 more or less; their mean is the assumed one. */
const hallSteps = Array.from({ length: 15 }, (_, step) => (step - 7) / 2);
const hallSpread = 1.5;
const chanceOf = (step: number) => Math.exp(-(step ** 2) / 2);
const scale =
  hallSteps.reduce((sum, step) => sum + chanceOf(step), 0) /
  hallSteps.reduce((sum, step) => sum + chanceOf(step) * Math.exp(hallSpread * step), 0);
const likelyHalls = hallSteps.map((step) => ({
  variance: assumedHall.variance * scale * Math.exp(hallSpread * step),
  log: -(step ** 2) / 2,
}));

/** Most marks of one athlete that are asked: the first ones tell of learning, the newest of the days. */
const most = 6;
/** Most days that are told apart, the newest. */
const mostDays = 40;

interface Visit extends DatedValue {
  /** From 1. */
  readonly visit: number;
}

/** One cause that moves several marks by the same number of typical errors. */
interface Cause {
  readonly of: (visit: Visit) => number;
  /** Its variance before any mark is seen; null: that of a day. */
  readonly variance: number | null;
}

/** What a mark was more than foretold, in typical errors, with what each cause (by its number) had a part in it. */
interface Surprise {
  readonly by: number;
  readonly variance: number;
  readonly parts: readonly { readonly at: number; readonly part: number }[];
}

/**
 * Returns what a store's marks say of what moves everybody: a mixed model in which each athlete has a level that drifts,
 * each step of the learning and a common training have a size, and each day has a shift of its own (Henderson's
 * equations; Robinson 1991, Statistical Science 6(1), from memory). The variance between days is weighed over fifteen
 * values, as the drift is. Where all athletes come on the same days in step, learning, training and days can't be told
 * apart; then the learning takes most of it, which makes fewer false gains.
 * @param series one list of marks for each athlete, oldest first, from the first ever known
 */
export function sharedOf(
  series: readonly (readonly DatedValue[])[],
  error: ErrorParts,
  drift: number,
): Shared {
  const people = series.filter((marks) => marks.length > 1).map(visitsOf);
  const counts = assumedLearning.steps.map((_step, step) => countAcross(people, step));
  const known = [...counts.keys()].filter((step) => (counts[step] ?? 0) >= leastTogether);
  const days = daysOf(people);
  if (known.length === 0 && days.length < 2) return { learning: assumedLearning, hall: assumedHall };
  const causes = causesOf(known, days, people);
  const sums = sumsOf(
    people.flatMap((visits) => surprisesIn(visits, causes, error, drift)),
    causes.length,
  );
  const answers = weighed(likelyHalls.map(({ variance, log }) => solve(sums, causes, variance, log)));
  const variance = meanOf(answers, (answer) => answer.hall);
  return {
    learning: learningOf(known, counts, answers),
    hall:
      days.length < 2 ? assumedHall : { variance, atMost: atMostOf(answers, days.length), days: days.length },
  };
}

function visitsOf(marks: readonly DatedValue[]): Visit[] {
  const visits = marks.map((mark, at) => ({ ...mark, visit: at + 1 }));
  return [...visits.slice(0, most), ...visits.slice(most).slice(-most)];
}

function countAcross(people: readonly Visit[][], step: number): number {
  return people.filter((visits) => visits.some(({ visit }) => isAfter(step, visit) === 1)).length;
}

/** Returns the days that enough athletes share. */
function daysOf(people: readonly Visit[][]): number[] {
  const counts = new Map<number, number>();
  for (const { day } of people.flat()) counts.set(day, (counts.get(day) ?? 0) + 1);
  const days = [...counts].filter(([, count]) => count >= leastTogether).map(([day]) => day);
  return days.toSorted((a, b) => a - b).slice(-mostDays);
}

function causesOf(known: readonly number[], days: readonly number[], people: readonly Visit[][]): Cause[] {
  const start = people.flat().reduce((least, { day }) => Math.min(least, day), Number.POSITIVE_INFINITY);
  return [
    ...known.map((step) => ({
      of: ({ visit }: Visit) => isAfter(step, visit),
      variance: (likelySteps[step] ?? 0) ** 2,
    })),
    { of: ({ day }) => (day - start) / 7, variance: (likelyTraining.sd / likelyTraining.weeks) ** 2 },
    ...days.map((shared) => ({ of: ({ day }: Visit) => (day === shared ? 1 : 0), variance: null })),
  ];
}

/** Returns an athlete's surprises; what the causes foretell goes through the same filter as the marks (`speedOf`). */
function surprisesIn(
  visits: readonly Visit[],
  causes: readonly Cause[],
  error: ErrorParts,
  drift: number,
): Surprise[] {
  const filtered = causes.flatMap((cause, at) => {
    const values = visits.map((visit) => ({ day: visit.day, value: cause.of(visit) }));
    return values.every(({ value }) => value === 0) ? [] : [{ at, steps: foretell(values, drift) }];
  });
  return foretell(visits, drift).flatMap(({ before, mark, variance }, index) => {
    const size = errorAt((before.value + mark.value) / 2, error);
    const parts = filtered.map(({ at, steps: foretold }) => {
      const step = foretold[index];
      return { at, part: step === undefined ? 0 : step.mark.value - step.before.value };
    });
    return size === 0 ? [] : [{ by: (mark.value - before.value) / size, variance, parts }];
  });
}

interface Sums {
  readonly squares: readonly (readonly number[])[];
  readonly products: readonly number[];
}

function sumsOf(surprises: readonly Surprise[], count: number): Sums {
  const squares = Array.from({ length: count }, () => new Array<number>(count).fill(0));
  const products = new Array<number>(count).fill(0);
  for (const { by, variance, parts } of surprises)
    for (const { at, part } of parts) {
      products[at] = (products[at] ?? 0) + (part * by) / variance;
      const row = squares[at] ?? [];
      for (const other of parts) row[other.at] = (row[other.at] ?? 0) + (part * other.part) / variance;
    }
  return { squares, products };
}

/** The causes' sizes and covariances for one variance between days, and what that variance is worth. */
interface Answer {
  readonly hall: number;
  readonly log: number;
  readonly sizes: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

function solve({ squares, products }: Sums, causes: readonly Cause[], hall: number, log: number): Answer {
  const variances = causes.map(({ variance }) => variance ?? hall);
  const precision = squares.map((row, at) =>
    row.map((square, other) => square + (at === other ? 1 / (variances[at] ?? 1) : 0)),
  );
  const covariance = jstat.inv(precision);
  const sizes = covariance.map((row) => row.reduce((sum, each, at) => sum + each * (products[at] ?? 0), 0));
  const fit = sizes.reduce((sum, size, at) => sum + size * (products[at] ?? 0), 0) / 2;
  const roots = jstat.cholesky(precision).map((row, at) => Math.log(row[at] ?? 1));
  const before = variances.reduce((sum, variance) => sum + Math.log(variance), 0) / 2;
  return { hall, sizes, covariance, log: log + fit - before - roots.reduce((sum, each) => sum + each, 0) };
}

type Weighed = Answer & { readonly weight: number };

function weighed(answers: readonly Answer[]): Weighed[] {
  const top = Math.max(...answers.map(({ log }) => log));
  const all = answers.reduce((sum, { log }) => sum + Math.exp(log - top), 0);
  return answers.map((answer) => ({ ...answer, weight: Math.exp(answer.log - top) / all }));
}

function meanOf(answers: readonly Weighed[], value: (answer: Answer) => number): number {
  return answers.reduce((sum, answer) => sum + answer.weight * value(answer), 0);
}

/** Fewest days that may say that a hall is calmer than assumed: two or three differ little by chance. Ours, no source. */
const leastCalmDays = 4;

/** Returns the variance between days that is exceeded with a chance of one in ten; each value stands for half a step. */
function atMostOf(answers: readonly Weighed[], days: number): number {
  const least = days < leastCalmDays ? assumedHall.atMost : 0;
  let below = 0;
  for (const { hall, weight } of answers) {
    const part = (0.9 - below) / weight;
    if (part <= 1) return Math.max(least, hall * Math.exp((hallSpread / 2) * (part - 0.5)));
    below += weight;
  }
  throw new Error("The weights of all likely halls add up to 1.");
}

/** Returns the learning over all weighed answers: the means, and the covariances within and between them. */
function learningOf(
  known: readonly number[],
  counts: readonly number[],
  answers: readonly Weighed[],
): Learning {
  const sizes = known.map((_step, at) => meanOf(answers, (answer) => answer.sizes[at] ?? 0));
  const placeOf = (step: number) => known.indexOf(step);
  const between = (one: number, other: number) =>
    meanOf(answers, (answer) => {
      const off = (at: number) => (answer.sizes[at] ?? 0) - (sizes[at] ?? 0);
      return (answer.covariance[one]?.[other] ?? 0) + off(one) * off(other);
    });
  const all = Array.from({ length: steps }, (_, step) => step);
  return {
    steps: all.map((step) => ({
      by: sizes[placeOf(step)] ?? 0,
      athletes: known.includes(step) ? (counts[step] ?? 0) : 0,
    })),
    covariance: all.map((row) =>
      all.map((column) =>
        known.includes(row) && known.includes(column) ? between(placeOf(row), placeOf(column)) : 0,
      ),
    ),
  };
}
