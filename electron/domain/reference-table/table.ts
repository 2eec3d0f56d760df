import type { MarkBounds } from "../privacy/coding.ts";
import { type BundleTest, type ToldCategory, toldCategories } from "../reference/bundle.ts";

/** What a group of everybody is called, where others are named by a category or an age band. */
export const everybody = "all";

export type GroupCategory = ToldCategory | typeof everybody;
export const groupCategories: readonly GroupCategory[] = [...toldCategories, everybody];

/** The percentiles that a group may tell: 5, 10, … 95. */
export const percentilesTold: readonly number[] = Array.from(
  { length: 19 },
  (_none, index) => 5 * (index + 1),
);

/**
 * What a group must have to be told. Twenty marks: `leastToCompare`. Three halls, so that no two of them can subtract
 * their own. Beyond a percentile at least five marks, which is the least that a bundle ever reports alike. Three
 * different results, so that a group never says of everybody in it the same.
 */
export const leastOfGroup = Object.freeze({ marks: 20, halls: 3, beyond: 5, different: 3 });

/** Where a percentile of a group lies: `low` ≤ percentile < `high`, in grains; null: open. Of the value, not of how good it is. */
export interface Percentile extends MarkBounds {
  /** One of `percentilesTold`. */
  readonly percentile: number;
}

/** The marks by one set of rules, of one category and age band or of all. */
export interface GroupOfMarks extends BundleTest {
  readonly category: GroupCategory;
  /** `25 to 29`, `unknown`, `not told` or `all`. */
  readonly ageBand: string;
  /** Number of marks that count: a hall's own beyond the cap (`cap.ts`) don't. */
  readonly marks: number;
  /** Number of halls behind them. */
  readonly halls: number;
  /**
   * The number of independent marks that would say as much: below `marks`, since those of one hall are alike, and since
   * few halls say little about how halls differ. At least 1.
   */
  readonly countsAs: number;
  /** First and last quarter (`2026-Q4`) or year in which they were tested. */
  readonly from: string;
  readonly to: string;
  /** In rising order; those beyond which fewer than five marks lie are left out. */
  readonly percentiles: readonly Percentile[];
}

/** A reference table: percentiles made of many bundles. No row of it is one person's or one hall's. */
export interface ReferenceTable {
  /** The name that whoever keeps the table gives themselves. */
  readonly publisher: string;
  /** Their public key (Ed25519, 32 bytes, base64url), by which a later table is known to be theirs. */
  readonly publicKey: string;
  /** The day on which it was made, and the last on which it may be brought in (ISO 8601). */
  readonly made: string;
  readonly validUntil: string;
  /** Content hashes of the bundles in it (`Bundle.contentSha256`), so that none is counted twice. */
  readonly bundles: readonly string[];
  readonly groups: readonly GroupOfMarks[];
}

/** Limits of a table from elsewhere: some ten times what 20,000 bundles come to. */
export const tableLimits = Object.freeze({
  bytes: 16 * 1024 * 1024,
  entries: 8,
  entryBytes: 16 * 1024 * 1024,
  totalBytes: 16 * 1024 * 1024,
  groups: 20_000,
  bundles: 200_000,
  publisherLength: 60,
});
