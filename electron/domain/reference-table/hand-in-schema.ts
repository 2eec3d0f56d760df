import { z } from "zod";
import { protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import { inUnit } from "../units.ts";
import { handInAgeBands, handInCategories, handInCodings, handInVersion } from "./hand-in-coding.ts";

/** The largest file that is read (characters): several times the longest that there is. */
export const mostOfHandIn = 16_384;

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

export type FileOfHandIn = z.infer<typeof handInSchema>;

/** What says whether it is such a file at all, and of which version. */
export const handInBeginning = z.object({ handInVersion: z.unknown() });
