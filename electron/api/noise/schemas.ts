import { z } from "zod";
import { sentenceSchema, testSchema, writtenSchema } from "../door/shapes.ts";

/** An amount of a test's unit as people say it; a time in plain seconds. */
const quantitySchema = z.object({ number: z.string(), unit: z.enum(["reps", "landings", "cm", "in", "s"]) });

/** What the noise of one test comes to; quantities are at the typical mark. */
const testNoiseSchema = z.object({
  test: testSchema,
  /** Whether the test swings by an amount, or by a share of the mark. */
  kind: z.enum(["grains", "share"]),
  /** What every change is judged by, in grains or as a share. */
  amount: z.number(),
  /** Nothing but the starting amount is behind it. */
  assumed: z.boolean(),
  /** How many pairs of this store's marks are behind it. */
  pairs: z.int(),
  /** Degrees of freedom behind it, and how many of them stand for the start. */
  degrees: z.number(),
  startingDegrees: z.number(),
  starting: z.number(),
  /** Where the starting amount is from. */
  source: sentenceSchema,
  /** A middling mark of the newest day that has any; without one, an example of ours. */
  typical: z.object({ value: z.int(), written: writtenSchema, date: z.string().nullable(), marks: z.int() }),
  used: quantitySchema,
  startingUsed: quantitySchema,
  /** What the store's own pairs say by themselves, with the 95 % confidence interval; null with fewer than two. */
  own: z
    .object({ used: quantitySchema, low: quantitySchema, high: quantitySchema, degrees: z.number() })
    .nullable(),
  /** What repeated trials within a day show, and whether that made the amount larger. */
  trials: z.object({ used: quantitySchema, athletes: z.int(), raised: z.boolean() }).nullable(),
  /** Two marks of one athlete must differ by more than this to be more than noise, 95 times of 100. */
  detectable: quantitySchema,
  /** The first marks better than the typical one that are judged a likely and a clear gain. */
  likelyFrom: writtenSchema.nullable(),
  clearFrom: writtenSchema.nullable(),
  /** A small but worthwhile change among the athletes of that day; null with too few marks, or all alike. */
  worthwhile: quantitySchema.nullable(),
  /** How well the pairs tell athletes apart, ICC(2,1) with its 95 % interval; null with too few pairs. */
  icc: z.object({ value: z.number(), low: z.number(), high: z.number() }).nullable(),
});

export const noiseSchema = z.object({
  tests: z.array(testNoiseSchema),
  /** So many pairs, and so many marks, are needed for the ICC and the worthwhile change. */
  enough: z.int(),
});

export type NoiseView = z.infer<typeof noiseSchema>;
export type TestNoiseView = z.infer<typeof testNoiseSchema>;
export type Quantity = z.infer<typeof quantitySchema>;
