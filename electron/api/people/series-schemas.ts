import { z } from "zod";
import { testSchema, writtenSchema } from "../door/shapes.ts";
import { placeSchema } from "../place/schemas.ts";

/** A complete mark as displayed, with its day. */
const datedSchema = z.object({
  date: z.string(),
  written: writtenSchema,
  source: z.enum(["day", "imported"]),
});

const pointSchema = datedSchema.extend({
  /** In grains. */
  value: z.int(),
  today: z.boolean(),
  /** Its rank among the marks before it. */
  standing: z.enum(["first", "best", "equal", "below"]),
  /** Change from the mark before, in grains, positive is better; null for the first. */
  change: z.number().nullable(),
  verdict: z.enum(["noise", "likely gain", "likely loss", "clear gain", "clear loss"]).nullable(),
  /** Chance that the true change has the same direction, 0.5 to 1. */
  chance: z.number().nullable(),
});

/** One athlete's marks of one test and variant that compare with each other. */
export const seriesSchema = z.object({
  test: testSchema,
  variant: z.string(),
  /** Oldest first, at least one. */
  points: z.array(pointSchema),
  /** The band of no change, in grains, around the last mark before today's, or around the newest. */
  noise: z.object({ low: z.number(), high: z.number() }).nullable(),
  /** True while the noise is an assumption, and the number of this store's pairs behind it. */
  error: z.object({ assumed: z.boolean(), pairs: z.int() }),
  /** True if the newest mark is from a day of this store, and so has others beside it. */
  placed: z.boolean(),
  /** The newest mark's place among others; null with too few. */
  place: placeSchema.nullable(),
});

/** A mark outside all series, and the reason. */
export const apartSchema = datedSchema.extend({
  test: testSchema,
  variant: z.string(),
  /** otherRules: of another fingerprint. notEarlier: of the same date from a sheet, or of a later one. */
  why: z.enum(["otherRules", "notEarlier"]),
});

export type Series = z.infer<typeof seriesSchema>;
export type Apart = z.infer<typeof apartSchema>;
export type DatedMark = z.infer<typeof datedSchema>;
