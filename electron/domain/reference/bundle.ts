import type { MarkBounds } from "../privacy/coding.ts";
import type { BundleKind } from "../privacy/rule.ts";
import type { TestCode } from "../tests/registry.ts";

/** How an athlete of a bundle wants to be compared, as it was told. */
export const toldCategories = ["women", "men", "open", "unknown", "not told"] as const;
export type ToldCategory = (typeof toldCategories)[number];

/** One way of doing one test in a bundle, with the rules by which it was held. */
export interface BundleTest {
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
}

/** Marks of which everything that is kept is alike: how many, and between which bounds (grains) they lie. */
export interface AlikeMarks extends BundleTest, MarkBounds {
  readonly category: ToldCategory;
  readonly ageBand: string;
  /** `2026-Q4`, or the year alone. */
  readonly quarter: string;
  readonly count: number;
}

/** All that is taken from a bundle. Which marks belong to one athlete, and the size of leagues, are left behind. */
export interface Bundle {
  readonly kind: BundleKind;
  /** Of the hashes of all that is in it: known again in a zip that was packed anew. In hexadecimal digits. */
  readonly contentSha256: string;
  /** The athletes are invented. */
  readonly demo: boolean;
  /** A day was only tried out: another bundle of it may come, whose rows must not be subtracted from these. */
  readonly rehearsal: boolean;
  readonly tests: readonly BundleTest[];
  readonly marks: readonly AlikeMarks[];
}
