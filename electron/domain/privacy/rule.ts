import type { Mark } from "../tests/protocol.ts";
import type { TestCode } from "../tests/registry.ts";
import type { Coding, MarkBounds } from "./coding.ts";
import type { Consent } from "./consent.ts";
import type { Levels, ToldQuasi } from "./hierarchy.ts";
import type { Quasi } from "./quasi.ts";

/**
 * The kinds of bundle. marks: one row per mark, an athlete's rows not linked (the default). profiles: one row per
 * athlete with the marks of several tests. Profiles get a stricter check, since a neighbour could know the whole row.
 */
export const bundleKinds = ["marks", "profiles"] as const;
export type BundleKind = (typeof bundleKinds)[number];

/** A mark that could be released, and what decides it. The ids `athlete` and `league` are never released. */
export interface Candidate extends Quasi {
  readonly athlete: number;
  readonly league: number;
  readonly test: TestCode;
  readonly mark: Mark;
  readonly consent: Consent;
  /** True if the big screen hides the athlete; left out if not. */
  readonly hidden?: boolean;
}

/** A complete mark of an athlete who shares; `value` in the test's grains. */
export interface Able extends Quasi {
  readonly athlete: number;
  readonly league: number;
  readonly test: TestCode;
  readonly value: number;
  /** See {@link Candidate}. */
  readonly hidden?: boolean;
}

/** A released mark. */
export interface ReleasedMark extends MarkBounds {
  readonly test: TestCode;
  readonly variant: string;
}

/** A row that may be released: one mark, or at least one for a profile. */
export interface ReleasedRow {
  readonly athlete: number;
  readonly quasi: ToldQuasi;
  readonly marks: readonly ReleasedMark[];
}

/**
 * The reasons to withhold a mark: no `share`; no guardian's consent for somebody who may be under 18; no complete mark;
 * a second mark of the same athlete, test and variant; a hidden athlete who could be found by removing everybody else
 * (`left-alone`); fewer than k alike, within the limit of suppression (`rare`); no coding of that test's marks that
 * protects everyone (`too-few`); a test that profiles drop so that the others can be reported (`untold`).
 */
export const holdReasons = [
  ...(["no-share", "no-guardian", "not-complete", "repeated"] as const),
  ...(["left-alone", "rare", "too-few", "untold"] as const),
] as const;
export type HoldReason = (typeof holdReasons)[number];

/** Marks withheld for one reason, test and variant. For the organiser's eyes: a bundle reports them more coarsely. */
export interface Suppressed {
  readonly reason: HoldReason;
  /** Number of marks. */
  readonly count: number;
  /** The athletes they belong to; one can be in several entries. */
  readonly athletes: readonly number[];
  readonly where: { readonly test: TestCode; readonly variant: string };
}

/** The coding of one test and variant; null where its marks are not reported. */
export interface TestCoding {
  readonly test: TestCode;
  readonly variant: string;
  readonly coding: Coding | null;
}

/** The decision on records that are reported alike: the marks of one test and variant, or all profiles together. */
export interface ReleaseDecision {
  readonly codings: readonly TestCoding[];
  /** Number of records that could be released, and that are. */
  readonly able: number;
  readonly kept: number;
  /** Null if no choice of levels was found: then none is released. */
  readonly levels: Levels | null;
  /** Information lost, from 0 to 1; 1 if none is released. */
  readonly loss: number;
}

/** The released rows, the withheld marks, and the decisions behind them. */
export interface Protected {
  readonly kind: BundleKind;
  readonly kept: readonly ReleasedRow[];
  readonly suppressed: readonly Suppressed[];
  readonly decisions: readonly ReleaseDecision[];
  /** Everything that could be released, to compare before and after on the organiser's own screen. */
  readonly able: readonly Able[];
}

/** The strictness of a bundle. */
export interface Strictness {
  /** Fewest athletes behind any row. */
  readonly k: number;
  /** Fewest different marks in any class. */
  readonly l: number;
  /** Largest share of records reported alike that may be suppressed. */
  readonly suppression: number;
}

/** k within the sport, and for the open web, and nothing lower; published small-cell rules are 3, 5, 10 and 11. */
export const ks = [5, 11] as const;
export const [leastK] = ks;
export const usualStrictness: Strictness = Object.freeze({ k: leastK, l: 2, suppression: 0.05 });
