import { z } from "zod";
import { testSchema, writtenSchema } from "../door/shapes.ts";
import { placeSchema } from "../place/schemas.ts";

/** A complete mark as people read it, with its day. */
const datedSchema = z.object({
  date: z.string(),
  written: writtenSchema,
  source: z.enum(["day", "imported"]),
});

const pointSchema = datedSchema.extend({
  /** Grains. */
  value: z.int(),
  today: z.boolean(),
  /** How it stood among the marks before it. */
  standing: z.enum(["first", "best", "equal", "below"]),
  /** Against the mark before it, in grains, positive for the better; null for the first. */
  change: z.number().nullable(),
  verdict: z.enum(["noise", "likely gain", "likely loss", "clear gain", "clear loss"]).nullable(),
  /** That the true change goes the same way, 0.5 to 1. */
  chance: z.number().nullable(),
});

/** One athlete's marks of one test and variant that compare with each other. */
export const seriesSchema = z.object({
  test: testSchema,
  variant: z.string(),
  /** Oldest first, at least one. */
  points: z.array(pointSchema),
  /** What is no news after the last test before today's, or after the newest; grains. */
  noise: z.object({ low: z.number(), high: z.number() }).nullable(),
  /** Whether the noise is nothing but an assumption, and from how many pairs of this store it comes. */
  error: z.object({ assumed: z.boolean(), pairs: z.int() }),
  /** Whether the newest mark was made on a day of this store, so that it has others beside it. */
  placed: z.boolean(),
  /** Where the newest mark stands among others; null where there are not enough. */
  place: placeSchema.nullable(),
});

/** A mark that is in no series, and why. */
export const apartSchema = datedSchema.extend({
  test: testSchema,
  variant: z.string(),
  /** otherRules: of another fingerprint. notEarlier: of the same date from a sheet, or of a later one. */
  why: z.enum(["otherRules", "notEarlier"]),
});

export type Series = z.infer<typeof seriesSchema>;
export type Apart = z.infer<typeof apartSchema>;
export type DatedMark = z.infer<typeof datedSchema>;
