import type { Coding } from "../privacy/coding.ts";
import { notTold } from "../privacy/hierarchy.ts";
import { ladders } from "../privacy/ladder.ts";
import { ofEachTest, type TestCode } from "../tests/registry.ts";

/**
 * Version of the file that one person hands in; goes up when its fields change, and when the rules of scoring do
 * (`rulesVersion`), which the file does not name by themselves.
 */
export const handInVersion = 1;

/** Who handed in, as told: the category in which they want to be compared, or none. */
export const handInCategories = ["women", "men", "open", notTold] as const;

/** The five-year bands of `ageBandOf` in which people test, or none. */
export const handInAgeBands: readonly string[] = [
  ...Array.from({ length: 18 }, (_none, index) => `${5 * (index + 1)} to ${5 * (index + 1) + 4}`),
  notTold,
];

/**
 * How coarse a result is told: by the one step in which linked results of one person are published, with one part
 * below and one above nearly all results, so that a rare one shows nobody.
 */
export const handInCodings: Readonly<Record<TestCode, Coding>> = Object.freeze(
  ofEachTest((test): Coding => {
    const { profileStep: step, usual } = ladders[test];
    const below = Math.max(1, Math.ceil(usual[0] / step)) * step;
    return { step, below, from: Math.floor(usual[1] / step) * step };
  }),
);
