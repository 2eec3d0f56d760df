import { windowWeeks } from "../cards/window.ts";
import { type ErrorParts, errorAt } from "./change.ts";
import { foretell } from "./level.ts";
import { normalShare } from "./normal.ts";
import type { DatedValue } from "./repeats.ts";

/**
 * How much athletes truly change: the variance that what somebody is good for gains in a week, in squares of the
 * typical error, as several values with what each is worth. Nobody knows it exactly, least of all a hall that has
 * tested once.
 */
export interface Drift {
  readonly likely: readonly { readonly perWeek: number; readonly weight: number }[];
  /** Their mean on logarithms: one value that stands for all where one is needed. */
  readonly perWeek: number;
  /** Number of changes of this store behind it; 0 while it is an assumption. */
  readonly changes: number;
}

/** Weeks between two tests: three or four months. */
const weeks = (windowWeeks.from + windowWeeks.until) / 2;

/** Steps of the values that are weighed, in standard deviations of what is assumed. */
const steps = Array.from({ length: 15 }, (_, step) => (step - 7) / 2);

/** Makes an assumption: true changes of this variance between two tests, by a factor of exp(`spread`) more or less. */
function assumed(variance: number, spread: number): Pick<Drift, "likely" | "perWeek"> {
  return weighed(
    steps.map((step) => (variance / weeks) * Math.exp(spread * step)),
    steps.map((step) => -(step ** 2) / 2),
  );
}

/**
 * What a hall without marks of its own assumes: true changes of about one typical error between two tests. Chances by it
 * are less than 10 in 100 off where true changes are of half or of twice a typical error, and no other assumption does
 * better for both (`tests/checks/chance-simulation`). Ours, no source.
 */
export const assumedDrift: Drift = Object.freeze({ ...assumed(1.06, 1), changes: 0 });

/** Number of changes from which on a hall learns from `enough` below, and what it learns from before and then. */
const enoughChanges = 60;
const few = { variance: 0.9, spread: 1.5, share: 0 };
const enough = { variance: 2, spread: 1.75, share: 0.2 };
/** The true changes that get the share: of one and a half typical errors. */
const sharing = 2.2;

/**
 * Returns what a hall with so many changes begins to learn from: more open than the assumption, so that its own marks soon say
 * more, and the higher the more of them there are. Sixty athletes can't tell true changes of one typical error from half of
 * that, and what days may move is counted in: with no more than the start for few, what they say is up to 4 in 100 too low.
 * With the start for enough, what two or ten athletes say is 10 to 12 too high instead (`tests/checks/chance-simulation`).
 * Ours, no source.
 */
function openFor(changes: number): Drift["likely"] {
  const part = Math.min(1, changes / enoughChanges);
  const variance = few.variance * (enough.variance / few.variance) ** part;
  const { likely } = assumed(variance, few.spread + part * (enough.spread - few.spread));
  return withShare(likely, sharing / weeks, part * enough.share);
}

/** Gives one value a share of what all are worth. */
function withShare(likely: Drift["likely"], perWeek: number, share: number): Drift["likely"] {
  const less = likely.map((each) => ({ ...each, weight: (1 - share) * each.weight }));
  return [...less, { perWeek, weight: share }];
}

/** Most marks of one athlete, the newest, that are asked: older ones tell of other years. */
const newest = 6;

/**
 * Returns what a store's own marks say of how much athletes change, on top of the assumption: each value of the drift
 * is worth what the likelihood of all marks says. What a day moved for everybody is taken out first: a hall or a judge
 * does that as well as training.
 * @param series one list of marks for each athlete and fingerprint, oldest first
 */
export function driftOf(series: readonly (readonly DatedValue[])[], error: ErrorParts): Drift {
  const lately = series.map((marks) => marks.slice(-newest)).filter((marks) => marks.length > 1);
  const changes = lately.reduce((sum, marks) => sum + marks.length - 1, 0);
  if (changes === 0) return assumedDrift;
  const open = openFor(changes);
  const values = open.map(({ perWeek }) => perWeek);
  const logs = open.map(({ perWeek, weight }) => Math.log(weight) + likelihood(lately, perWeek, error));
  return { ...weighed(values, logs), changes };
}

function weighed(values: readonly number[], logs: readonly number[]): Pick<Drift, "likely" | "perWeek"> {
  const most = Math.max(...logs);
  const sum = logs.reduce((all, log) => all + Math.exp(log - most), 0);
  const likely = values.map((perWeek, at) => ({
    perWeek,
    weight: Math.exp((logs[at] ?? Number.NEGATIVE_INFINITY) - most) / sum,
  }));
  const middle = likely.reduce((all, { perWeek, weight }) => all + weight * Math.log(perWeek), 0);
  return { likely, perWeek: Math.exp(middle) };
}

interface Surprise {
  readonly day: number;
  /** What came less what was foretold, in typical errors, and its variance. */
  readonly by: number;
  readonly variance: number;
}

/** Returns the logarithm of the likelihood of all marks but each athlete's first, for one drift. */
export function likelihood(
  series: readonly (readonly DatedValue[])[],
  drift: number,
  error: ErrorParts,
): number {
  const surprises = series.flatMap((marks) => surprisesIn(marks, drift, error));
  let sum = 0;
  for (const ofDay of Map.groupBy(surprises, ({ day }) => day).values()) {
    const mean = ofDay.length < 2 ? 0 : ofDay.reduce((all, { by }) => all + by, 0) / ofDay.length;
    const left = ofDay.length < 2 ? 1 : (ofDay.length - 1) / ofDay.length;
    // What a mean takes out makes each surprise smaller, and is one of them less.
    for (const { by, variance } of ofDay)
      sum -= (left * Math.log(variance) + (by - mean) ** 2 / variance) / 2;
  }
  return sum;
}

function surprisesIn(marks: readonly DatedValue[], drift: number, error: ErrorParts): Surprise[] {
  return foretell(marks, drift).flatMap(({ before, mark, variance }) => {
    const size = errorAt((before.value + mark.value) / 2, error);
    return size === 0 ? [] : [{ day: mark.day, by: (mark.value - before.value) / size, variance }];
  });
}

/**
 * Returns the chance, from 0.5 to 1, that a change is a true one in its direction: with how much athletes really
 * change, so that a large surprise in a test that varies much is mostly taken for what it mostly is.
 * @param spreads the change in units of what it varies by when nothing has changed, taken without its sign
 * @param variance that unit's square, in squares of the typical error
 * @param weeks since the level was last seen
 */
export function chanceReal(spreads: number, variance: number, weeks: number, { likely }: Drift): number {
  return likely.reduce((sum, { perWeek, weight }) => {
    const truly = perWeek * Math.max(weeks, 0);
    return sum + weight * normalShare(Math.abs(spreads) * Math.sqrt(truly / (truly + variance)));
  }, 0);
}
