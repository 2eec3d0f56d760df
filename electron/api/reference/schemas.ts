import { z } from "zod";
import { bundleKinds } from "../../domain/privacy/rule.ts";
import { bundleLimits } from "../../domain/reference/limits.ts";
import { testSchema } from "../door/shapes.ts";

/** How many marks a bundle has of one way of doing one test. */
const referenceTestSchema = z.object({
  test: testSchema,
  variant: z.string(),
  marks: z.int(),
  /** Held by the rules of the day at hand (without one, by the usual rules): only then it is compared with. */
  sameRules: z.boolean(),
});

const content = {
  kind: z.enum(bundleKinds),
  tests: z.array(referenceTestSchema),
  marks: z.int(),
  /** `2026-Q4`, or a year alone. */
  quarters: z.array(z.string()),
};

/** What is in a bundle that was brought and not yet added. */
export const broughtSchema = z.object({
  bundleId: z.uuid(),
  ...content,
  /** The origin under which the same bundle is kept already; null: it is not. */
  known: z.string().nullable(),
});

/** A bundle that is kept. */
export const referenceSchema = z.object({
  id: z.int(),
  origin: z.string(),
  addedAt: z.string(),
  ...content,
});

export const originSchema = z.string().trim().min(1).max(bundleLimits.originLength);

export type ReferenceTest = z.infer<typeof referenceTestSchema>;
export type Brought = z.infer<typeof broughtSchema>;
export type KeptReference = z.infer<typeof referenceSchema>;
