import type { Mark } from "../tests/protocol.ts";
import type { TestCode } from "../tests/registry.ts";
import type { Coding, MarkBounds } from "./coding.ts";
import type { Consent } from "./consent.ts";
import type { Levels, ToldQuasi } from "./hierarchy.ts";
import type { Quasi } from "./quasi.ts";

/**
 * marks: a row a mark, the rows of one athlete not linked (the default). profiles: a row an athlete with the marks of
 * several tests, by a stricter check: everything in the row together is what a neighbour could know.
 */
export const bundleKinds = ["marks", "profiles"] as const;
export type BundleKind = (typeof bundleKinds)[number];

/** A mark that could leave, with what is needed to decide whether it may. `athlete` and `league` are ids that never leave. */
export interface Candidate extends Quasi {
  readonly athlete: number;
  readonly league: number;
  readonly test: TestCode;
  readonly mark: Mark;
  readonly consent: Consent;
  /** Whether the board hides the athlete; left out: it does not. */
  readonly hidden?: boolean;
}

/** A complete mark of somebody who shares; `value` in the test's grains. */
export interface Able extends Quasi {
  readonly athlete: number;
  readonly league: number;
  readonly test: TestCode;
  readonly value: number;
  /** As of a {@link Candidate}. */
  readonly hidden?: boolean;
}

/** A mark as it leaves. */
export interface ReleasedMark extends MarkBounds {
  readonly test: TestCode;
  readonly variant: string;
}

/** A row that may leave: one mark, or of a profile at least one. */
export interface ReleasedRow {
  readonly athlete: number;
  readonly quasi: ToldQuasi;
  readonly marks: readonly ReleasedMark[];
}

/**
 * Why a mark stays: no `share`; no guardian's consent for somebody who may be under 18; no complete mark; a second mark of
 * the same athlete, test and variant; somebody whom the board hides, and who could be found by taking everybody else off
 * (`left-alone`); fewer than k alike, within the limit of suppression (`rare`); no way of telling the
 * marks of that test without giving somebody away (`too-few`); a test that profiles leave out so that the others can be
 * told (`untold`).
 */
export const holdReasons = [
  ...(["no-share", "no-guardian", "not-complete", "repeated"] as const),
  ...(["left-alone", "rare", "too-few", "untold"] as const),
] as const;
export type HoldReason = (typeof holdReasons)[number];

/** Marks that stay for one reason and place. For the organiser's eyes: what is said of it in a bundle is coarser. */
export interface Suppressed {
  readonly reason: HoldReason;
  /** Marks. */
  readonly count: number;
  /** Who they belong to; an athlete can be in several places. */
  readonly athletes: readonly number[];
  readonly where: { readonly test: TestCode; readonly variant: string };
}

/** How the marks of one test and variant are told; null where they are not. */
export interface TestCoding {
  readonly test: TestCode;
  readonly variant: string;
  readonly coding: Coding | null;
}

/** What was decided for records that are told alike: the marks of one test and variant, or all profiles together. */
export interface ReleaseDecision {
  readonly codings: readonly TestCoding[];
  /** Records that could have left, and those that do. */
  readonly able: number;
  readonly kept: number;
  /** Null where no way of telling them was found: then none leaves. */
  readonly levels: Levels | null;
  /** Information lost, from 0 to 1; 1 where none leaves. */
  readonly loss: number;
}

/** What may leave, what stays, and how it was decided. */
export interface Protected {
  readonly kind: BundleKind;
  readonly kept: readonly ReleasedRow[];
  readonly suppressed: readonly Suppressed[];
  readonly decisions: readonly ReleaseDecision[];
  /** Everything that could have left, for comparing before with after on the organiser's own screen. */
  readonly able: readonly Able[];
}

/** How strict a bundle is. */
export interface Strictness {
  /** The fewest athletes behind any row. */
  readonly k: number;
  /** The fewest different marks in any class. */
  readonly l: number;
  /** The largest share of the records told alike that may be suppressed. */
  readonly suppression: number;
}

/** k within the sport, and for the open web; published small-cell rules are 3, 5, 10 and 11. Nothing lower leaves. */
export const ks = [5, 11] as const;
export const [leastK] = ks;
export const usualStrictness: Strictness = Object.freeze({ k: leastK, l: 2, suppression: 0.05 });
