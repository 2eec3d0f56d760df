import { z } from "zod";
import { sentenceSchema, testSchema, writtenSchema } from "../door/shapes.ts";

/** An amount in a test's unit for people; a time in plain seconds. */
const quantitySchema = z.object({
  number: z.string(),
  unit: z.enum(["reps", "landings", "cm", "in", "s"]),
});

/** The noise of one test; quantities are at the typical mark. */
const testNoiseSchema = z.object({
  test: testSchema,
  /** True if only the starting amount is behind it. */
  assumed: z.boolean(),
  /** Number of pairs of this store's marks behind it. */
  pairs: z.int(),
  /** Degrees of freedom behind it, the start's included. */
  degrees: z.number(),
  /** The starting amount. */
  starting: quantitySchema,
  /** Source of the starting amount. */
  source: sentenceSchema,
  /** A middling mark of the newest day that has any; without one, our example. */
  typical: z.object({ value: z.int(), written: writtenSchema, date: z.string().nullable(), marks: z.int() }),
  /** The typical error in use, and the part of it that the smallest mark has too. */
  used: quantitySchema,
  least: quantitySchema,
  /** The estimate from the store's own pairs, with its 95 % confidence interval; null with fewer than two. */
  own: z
    .object({ used: quantitySchema, low: quantitySchema, high: quantitySchema, degrees: z.number() })
    .nullable(),
  /** The estimate from repeated trials within a day, and whether it raised the amount. */
  trials: z.object({ used: quantitySchema, athletes: z.int(), raised: z.boolean() }).nullable(),
  /** How much whole days differ, as an SD, and the number of days behind it; 0: an assumption. */
  hall: z.object({ used: quantitySchema, days: z.int() }),
  /** What athletes gain by knowing the test, with its 95 % interval; only steps that enough of them took. */
  learning: z.array(
    z.object({
      /** The visit before the step, from 1. */
      from: z.int(),
      by: quantitySchema,
      low: quantitySchema,
      high: quantitySchema,
      athletes: z.int(),
    }),
  ),
  /** The first marks better than the typical one with the verdicts likely gain and clear gain. */
  likelyFrom: writtenSchema.nullable(),
  clearFrom: writtenSchema.nullable(),
  /** The difference from the typical mark to the first clear gain; null where there is none. */
  clearBy: quantitySchema.nullable(),
  /** A small but worthwhile change among that day's athletes; null with too few marks, or all alike. */
  worthwhile: quantitySchema.nullable(),
  /** The test's power to distinguish athletes: ICC(2,1) with its 95 % interval; null with too few tested twice. */
  icc: z.object({ value: z.number(), low: z.number(), high: z.number() }).nullable(),
});

export const noiseSchema = z.object({
  tests: z.array(testNoiseSchema),
  /** True while a day is open: what its results teach comes in when it is closed. */
  isDayOpen: z.boolean(),
  /** Number of athletes that the ICC and the worthwhile change need. */
  enough: z.int(),
});

export type NoiseView = z.infer<typeof noiseSchema>;
export type TestNoiseView = z.infer<typeof testNoiseSchema>;
export type Quantity = z.infer<typeof quantitySchema>;
