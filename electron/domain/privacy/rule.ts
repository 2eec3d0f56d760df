import type { Mark, TestCode } from "../protocols/protocol.ts";
import type { Consent } from "./consent.ts";
import type { Quasi } from "./quasi.ts";

/** A mark that could leave, with what is needed to decide whether it may. `athlete` is an id that never leaves. */
export interface Candidate extends Quasi {
  readonly athlete: number;
  readonly test: TestCode;
  readonly mark: Mark;
  readonly consent: Consent;
}

/** A row that may leave; `value` in the test's grains. */
export interface Kept extends Quasi {
  readonly athlete: number;
  readonly test: TestCode;
  readonly value: number;
}

/**
 * Why a row stays: no `share`; no guardian's consent for somebody who may be under 18; no complete mark; a second mark
 * of the same athlete, test and variant; or a class (all quasi-identifiers and the test alike) of fewer than k athletes.
 */
export const holdReasons = ["no-share", "no-guardian", "not-complete", "repeated", "small-class"] as const;
export type HoldReason = (typeof holdReasons)[number];

/** Rows that stay for one reason and place. For the organiser's eyes: what is said of it in a bundle is coarser. */
export interface Suppressed {
  readonly reason: HoldReason;
  /** Rows. */
  readonly count: number;
  /** Who they belong to; an athlete can be in several places. */
  readonly athletes: readonly number[];
  /** The test and variant, and of a small class also what describes it. */
  readonly where: { readonly test: TestCode } & Pick<Quasi, "variant"> & Partial<Quasi>;
}

/** What may leave, what stays, and the fewest athletes in any class that leaves (null when nothing does). */
export interface Protected {
  readonly kept: readonly Kept[];
  readonly suppressed: readonly Suppressed[];
  readonly kReached: number | null;
}

/**
 * Decides what of a day may leave. Every candidate is either kept or counted in `suppressed`, whatever the order they
 * came in. One rule can replace another here; whoever calls does not know which.
 */
export interface PrivacyRule {
  /** Named in the bundle, so that a reader knows how its rows were chosen. */
  readonly name: string;
  /** @throws Refusal `bad-input` when k is below {@link leastK}. */
  protect(candidates: readonly Candidate[], options: { readonly k: number }): Protected;
}

/** Fewer athletes than this in one class are never published (published small-cell rules: 3, 5, 10 and 11). */
export const leastK = 5;
