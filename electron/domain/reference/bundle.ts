import type { MarkBounds } from "../privacy/coding.ts";
import type { BundleKind } from "../privacy/rule.ts";
import type { TestCode } from "../tests/registry.ts";

/** The category of a bundle's athlete, as reported. */
export const toldCategories = ["women", "men", "open", "unknown", "not told"] as const;
export type ToldCategory = (typeof toldCategories)[number];

/** One variant of one test in a bundle, with its rules. */
export interface BundleTest {
  readonly test: TestCode;
  readonly variant: string;
  readonly fingerprint: string;
}

/** Marks that are alike in everything kept of them: their count and their bounds (grains). */
export interface AlikeMarks extends BundleTest, MarkBounds {
  readonly category: ToldCategory;
  readonly ageBand: string;
  /** `2026-Q4`, or the year alone. */
  readonly quarter: string;
  readonly count: number;
}

/** The content read from a bundle. Links between the marks of one athlete, and league sizes, are dropped. */
export interface Bundle {
  readonly kind: BundleKind;
  /** Hash over the hashes of its files, in hexadecimal digits; it recognises the content in a repacked zip. */
  readonly contentSha256: string;
  /** True if the athletes are invented. */
  readonly demo: boolean;
  /** True for a rehearsed day: another bundle of it may come, whose rows must not be subtracted from these. */
  readonly rehearsal: boolean;
  readonly tests: readonly BundleTest[];
  readonly marks: readonly AlikeMarks[];
}
