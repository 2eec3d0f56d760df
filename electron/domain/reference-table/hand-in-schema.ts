import { z } from "zod";
import type { Coding } from "../privacy/coding.ts";
import { notTold } from "../privacy/hierarchy.ts";
import { ladders } from "../privacy/ladder.ts";
import { ofEachTest, protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import { inUnit } from "../units.ts";

/**
 * Version of the file that one person hands in; goes up when its fields change, and when the rules of scoring do
 * (`rulesVersion`), which the file does not name by themselves.
 */
export const handInVersion = 1;

/** The largest file that is read (characters): several times the longest that there is. */
export const mostOfHandIn = 16_384;

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

/** One result, in the unit of its test; `low` ≤ result < `high`, null: open. */
function resultSchema(test: TestCode) {
  const { grain, variants } = protocolOf(test);
  const { step, below, from } = handInCodings[test];
  const bound = z
    .number()
    .min(inUnit(grain, below))
    .max(inUnit(grain, from))
    .multipleOf(inUnit(grain, step))
    .nullable();
  return z.strictObject({
    test: z.literal(test),
    variant: z.enum(variants),
    /** The fingerprint. */
    rules: z.string().max(2000),
    low: bound,
    high: bound,
    unit: z.literal(grain.unit),
  });
}

const [first, ...others] = testCodes;

/** A file that one person hands in, in full; hand-in.schema.json says the same for other programs. */
export const handInSchema = z.strictObject({
  handInVersion: z.literal(handInVersion),
  /** Random, of this file alone: so that the same file twice counts once. */
  id: z.string().regex(/^[0-9a-f]{32}$/),
  category: z.enum(handInCategories),
  ageBand: z.enum(handInAgeBands),
  results: z
    .array(z.discriminatedUnion("test", [resultSchema(first), ...others.map(resultSchema)]))
    .min(1)
    .max(testCodes.reduce((sum, test) => sum + protocolOf(test).variants.length, 0)),
});
