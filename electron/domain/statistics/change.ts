import { definitionOf, ofEachTest, protocolOf, type TestCode } from "../tests/registry.ts";
import { upperShare } from "./interval.ts";
import { normalQuantile, normalShare } from "./normal.ts";
import { quantileOfT, shareOfT } from "./student.ts";

/**
 * The two parts of what one athlete's mark varies by from day to day when nothing has changed. Their squares add up: a
 * short hold varies by the reading and the start alone, a long one by a share of itself.
 */
export interface ErrorParts {
  /** The part that every mark has, in grains. */
  readonly fixed: number;
  /** The part that grows with the mark, as a share of it. */
  readonly share: number;
}

/** A test's typical error as the program uses it. */
export interface TypicalError extends ErrorParts {
  /** Degrees of freedom behind it, the start's included. */
  readonly degrees: number;
  /**
   * True until a store has pairs of its own to compute it from; the app says so wherever it uses one. It is then taken
   * as known, since nobody knows how wrong an assumption is.
   */
  readonly assumed: boolean;
  /** Number of pairs of the store's own marks behind it. */
  readonly pairs: number;
}

/** The typical errors of a store without pairs; each test's folder has the parts and their source. */
export const startingTypicalErrors: Readonly<Record<TestCode, TypicalError>> = Object.freeze(
  ofEachTest((test) => {
    const { fixed, share, degrees } = definitionOf(test).figures.typicalError;
    const grains = fixed * protocolOf(test).grain.perUnit;
    return Object.freeze({ fixed: grains, share, degrees, assumed: true, pairs: 0 });
  }),
);

/** The verdict on a change, given the typical error. */
export type Verdict = "noise" | "likely gain" | "likely loss" | "clear gain" | "clear loss";

/** Chances that normal variation alone stays below a change, from which on it is likely, and clear. */
export const likelyChance = 0.8;
export const clearChance = 0.975;

/** Returns the typical error in grains at a mark of `value` grains: √(fixed² + (share · mark)²). */
export function errorAt(value: number, { fixed, share }: ErrorParts): number {
  return Math.hypot(fixed, share * value);
}

/** Returns a test's typical error in grains at a mark of `value` grains. */
export function typicalError(code: TestCode, value: number, error: ErrorParts = startingTypicalErrors[code]) {
  return errorAt(value, error);
}

/**
 * Returns how far from a mark of `value` grains the truth may well lie on either side, in grains: 95 times in 100 it is
 * no farther. A place is the athlete's, who would have shown another mark on another day.
 */
export function reachOf(
  code: TestCode,
  value: number,
  error: TypicalError = startingTypicalErrors[code],
): number {
  return spreadsBelow(upperShare(0.95), error) * typicalError(code, value, error);
}

/** Returns the improvement between two marks in grains: positive is better, whichever way the test counts. */
export function gain(better: "higher" | "lower", from: number, to: number): number {
  return better === "higher" ? to - from : from - to;
}

/** A change beside what it varies by when nothing has changed; both in grains. */
export interface Change {
  /** Positive is better. */
  readonly gain: number;
  /** The standard deviation of the change of somebody who stayed the same. */
  readonly spread: number;
  readonly error: Pick<TypicalError, "degrees" | "assumed">;
}

/**
 * Returns the change between two marks; the typical error is taken at their mean.
 * @param hall the variance of what a whole day moves for everybody, in squares of the typical error
 */
export function changeBetween(
  code: TestCode,
  from: number,
  to: number,
  error: TypicalError = startingTypicalErrors[code],
  hall = 0,
): Change {
  const spread = Math.sqrt(2 * (1 + hall)) * typicalError(code, (from + to) / 2, error);
  return { gain: gain(protocolOf(code).better, from, to), spread, error };
}

/** Returns a change in units of what it varies by when nothing has changed; 0 where nothing varies, as between noughts. */
export function spreadsOf({ gain: gained, spread }: Change): number {
  return spread > 0 ? gained / spread : 0;
}

/**
 * Returns the chance, from 0.5 to 1, that somebody who stayed the same changes by less than this in its direction.
 * Student's t with the error's degrees of freedom (Smyth 2004, Statistical Applications in Genetics and Molecular
 * Biology 3(1), for an error pooled with a start); Φ while the error is an assumption.
 */
export function chanceBelow(change: Change): number {
  return shareBelow(Math.abs(spreadsOf(change)), change.error);
}

/** Returns the share of those who stayed the same whose change is below so many spreads, losses being below nought. */
export function shareBelow(spreads: number, { assumed, degrees }: Change["error"]): number {
  return assumed ? normalShare(spreads) : shareOfT(spreads, degrees);
}

/** Returns the chance that somebody who stayed the same changes at least this much, for better or for worse. */
export function chanceAlone(change: Change): number {
  return 2 * (1 - chanceBelow(change));
}

/** Returns how many spreads a change of somebody who stayed the same is below with this chance. */
export function spreadsBelow(chance: number, { assumed, degrees }: Change["error"]): number {
  return assumed ? normalQuantile(chance) : quantileOfT(chance, degrees);
}

/** Judges a change by how often the word would be wrong for somebody who stayed the same. */
export function verdictOn(change: Change): Verdict {
  const chance = chanceBelow(change);
  if (chance < likelyChance) return "noise";
  if (chance < clearChance) return change.gain > 0 ? "likely gain" : "likely loss";
  return change.gain > 0 ? "clear gain" : "clear loss";
}

/** Judges a change between two marks in grains; see {@link changeBetween}. */
export function verdict(
  code: TestCode,
  from: number,
  to: number,
  error: TypicalError = startingTypicalErrors[code],
  hall = 0,
): Verdict {
  return verdictOn(changeBetween(code, from, to, error, hall));
}

/** True if two marks of one athlete differ by over four typical errors (at their mean): ask "sure?". */
export function differsFromLast(
  code: TestCode,
  last: number,
  value: number,
  error: ErrorParts = startingTypicalErrors[code],
): boolean {
  return Math.abs(value - last) > 4 * typicalError(code, (last + value) / 2, error);
}
