import { definitionOf, ofEachTest, protocolOf, type TestCode } from "../tests/registry.ts";
import { normalShare } from "./normal.ts";

/**
 * The spread of one athlete's marks from day to day when nothing has changed, in grains or as a share of the mark.
 * `assumed` until a store has pairs of its own to compute it from; the app says so wherever it uses one.
 */
export interface TypicalError {
  readonly kind: "grains" | "share";
  /** The amount in use. */
  readonly amount: number;
  /** True if only the starting amount is behind it. */
  readonly assumed: boolean;
  /** Number of pairs of the store's own marks behind it. */
  readonly pairs: number;
  /** The starting amount of a store without pairs: published, or our own. */
  readonly starting: number;
}

function assume(kind: TypicalError["kind"], amount: number): TypicalError {
  return Object.freeze({ kind, amount, assumed: true, pairs: 0, starting: amount });
}

/** The typical errors of a store without pairs; each test's folder has the amount and its source. */
export const startingTypicalErrors = Object.freeze(
  ofEachTest((test) => {
    const { kind, amount } = definitionOf(test).figures.typicalError;
    return assume(kind, amount);
  }),
);

/** The verdict on a change, given the typical error. */
export type Verdict = "noise" | "likely gain" | "likely loss" | "clear gain" | "clear loss";

/** Chances of a true change from which on it is likely, and clear. */
export const likelyChance = 0.8;
export const clearChance = 0.975;

/** Returns the typical error in grains at a mark of `value` grains. */
export function typicalError(code: TestCode, value: number, error = startingTypicalErrors[code]): number {
  return error.kind === "grains" ? error.amount : error.amount * value;
}

/** Returns the improvement between two marks in grains: positive is better, whichever way the test counts. */
export function gain(better: "higher" | "lower", from: number, to: number): number {
  return better === "higher" ? to - from : from - to;
}

/**
 * Returns the chance that the true change is an improvement: Φ(Δ / (√2 · TE)) with no prior.
 * Source: Hopkins 2000, Sports Medicine 30(1).
 */
export function chanceOfGain(change: number, error: number): number {
  if (change === 0) return 0.5;
  return normalShare(change / (Math.SQRT2 * error));
}

/** Judges a change between two marks in grains. A typical error in per cent is applied to their mean. */
export function verdict(
  code: TestCode,
  from: number,
  to: number,
  error = startingTypicalErrors[code],
): Verdict {
  const change = gain(protocolOf(code).better, from, to);
  const chance = chanceOfGain(Math.abs(change), typicalError(code, (from + to) / 2, error));
  if (chance < likelyChance) return "noise";
  if (chance < clearChance) return change > 0 ? "likely gain" : "likely loss";
  return change > 0 ? "clear gain" : "clear loss";
}

/** True if two marks of one athlete differ by over four typical errors (at their mean): ask "sure?". */
export function differsFromLast(
  code: TestCode,
  last: number,
  value: number,
  error = startingTypicalErrors[code],
): boolean {
  return Math.abs(value - last) > 4 * typicalError(code, (last + value) / 2, error);
}
