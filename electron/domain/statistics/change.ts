import { definitionOf, ofEachTest, protocolOf, type TestCode } from "../tests/registry.ts";
import { normalShare } from "./normal.ts";

/**
 * The spread of one athlete's marks from day to day when nothing has changed: as grains, or as a share of the mark.
 * `assumed` until a store has pairs of its own to work it out from; the app says so wherever it uses one.
 */
export interface TypicalError {
  readonly kind: "grains" | "share";
  /** What is used. */
  readonly amount: number;
  /** Whether nothing but the starting amount is behind it. */
  readonly assumed: boolean;
  /** How many pairs of the store's own marks are behind it. */
  readonly pairs: number;
  /** What a store without pairs starts from: published, or our own. */
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

/** What a change amounts to once the typical error is taken into account. */
export type Verdict = "noise" | "likely gain" | "likely loss" | "clear gain" | "clear loss";

/** From this chance of a true change on, it is likely; from the second on, clear. */
export const likelyChance = 0.8;
export const clearChance = 0.975;

/** The typical error in grains at a mark of `value` grains. */
export function typicalError(code: TestCode, value: number, error = startingTypicalErrors[code]): number {
  return error.kind === "grains" ? error.amount : error.amount * value;
}

/** The improvement from one mark to the next in grains: positive is better, whichever way the test counts. */
export function gain(better: "higher" | "lower", from: number, to: number): number {
  return better === "higher" ? to - from : from - to;
}

/**
 * Chance that the true change is an improvement: Φ(Δ / (√2 · TE)) with no prior.
 * Source: Hopkins 2000, Sports Medicine 30(1).
 */
export function chanceOfGain(change: number, error: number): number {
  if (change === 0) return 0.5;
  return normalShare(change / (Math.SQRT2 * error));
}

/** Judges a change between two marks in grains; a typical error in per cent is taken at the mean of the two. */
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

/** Whether two marks of one athlete lie more than four typical errors apart (taken at their mean): ask "sure?". */
export function differsFromLast(
  code: TestCode,
  last: number,
  value: number,
  error = startingTypicalErrors[code],
): boolean {
  return Math.abs(value - last) > 4 * typicalError(code, (last + value) / 2, error);
}
