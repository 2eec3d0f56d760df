import { z } from "zod";
import { testSchema, writtenSchema } from "../door/shapes.ts";

/** Who did it, as far as consent goes: the skated-under name, or the bib alone. */
const labelSchema = z.discriminatedUnion("as", [
  z.object({ as: z.literal("name"), name: z.string() }),
  z.object({ as: z.literal("bib"), bib: z.int() }),
]);

/** A difference between two marks of one athlete, always for the better; the test says what better means. */
const gainSchema = z.object({
  number: z.string(),
  unit: z.enum(["reps", "landings", "cm", "in", "s", "min:s"]),
});

const bestSchema = z.object({
  /** Rises with each new mark of the day, and with a new trial that a mark is made of. */
  seq: z.int(),
  label: labelSchema,
  test: testSchema,
  written: writtenSchema,
  gain: gainSchema,
  /** The gain in spreads of a difference from day to day (√2 · typical error): 0.84 is likely real, 1.96 clearly. */
  spreads: z.number(),
  /** Whether that gain over the own best is more than the noise of the test. */
  verdict: z.enum(["noise", "likely gain", "clear gain"]),
});

const rowSchema = z.object({
  seq: z.int(),
  label: labelSchema,
  written: writtenSchema,
  standing: z.enum(["best", "equal", "first"]),
  /** Null where there is nothing to be better than, or nothing is better. */
  gain: gainSchema.nullable(),
});

const callSchema = z.object({ bib: z.int(), name: z.string().nullable() });

export const boardSchema = z.object({
  /** Somebody at the desk has blanked it: nothing else is in it then. */
  hidden: z.boolean(),
  /** Whether all of this is invented. */
  demo: z.boolean(),
  day: z
    .object({ title: z.string(), date: z.string(), state: z.enum(["planned", "open", "closed"]) })
    .nullable(),
  /** The newest bests, newest first. */
  newest: z.array(bestSchema),
  /** The tests in their order; rows by gain over the athlete's own best before, then equal marks, then first ones. */
  walls: z.array(z.object({ test: testSchema, rows: z.array(rowSchema) })),
  /** Who is called, by test in their order, whoever was called first in front. */
  calls: z.array(z.object({ test: testSchema, called: z.array(callSchema) })),
  /**
   * Counts of those alone who agreed to be shown: with everybody in them, what is shown could be taken off, and the rest
   * were the hidden ones'. None by league: leagues are not ranked either.
   */
  totals: z.object({ bests: z.int(), testsDone: z.int(), athletesTested: z.int() }),
});

export type Board = z.infer<typeof boardSchema>;
export type Best = z.infer<typeof bestSchema>;
export type BoardRow = z.infer<typeof rowSchema>;
export type Label = z.infer<typeof labelSchema>;
export type Gain = z.infer<typeof gainSchema>;
