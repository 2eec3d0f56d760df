import { z } from "zod";
import { testSchema, writtenSchema } from "../door/shapes.ts";

/** The athlete's label by their consent: the derby name, or the bib alone. */
const labelSchema = z.discriminatedUnion("as", [
  z.object({ as: z.literal("name"), name: z.string() }),
  z.object({ as: z.literal("bib"), bib: z.int() }),
]);

/** An improvement between two marks of one athlete; the test says which way is better. */
const gainSchema = z.object({
  number: z.string(),
  unit: z.enum(["reps", "landings", "cm", "in", "s", "min:s"]),
});

const bestSchema = z.object({
  /** Rises with each new mark of the day, and with each new trial behind a mark. */
  seq: z.int(),
  label: labelSchema,
  test: testSchema,
  written: writtenSchema,
  gain: gainSchema,
  /**
   * The gain in standard deviations of a day-to-day difference (√2 · typical error): 0.84 is a likely gain, 1.96 a clear
   * one.
   */
  spreads: z.number(),
  /** The verdict on that gain over the athlete's own best, against the test's noise. */
  verdict: z.enum(["noise", "likely gain", "clear gain"]),
});

/** Somebody's first mark of a test: nothing to compare it with yet, and news all the same. */
const firstSchema = bestSchema.pick({ seq: true, label: true, test: true, written: true });

const rowSchema = z.object({
  seq: z.int(),
  label: labelSchema,
  written: writtenSchema,
  standing: z.enum(["best", "equal", "first"]),
  /** Null without an earlier mark, or without an improvement. */
  gain: gainSchema.nullable(),
});

const callSchema = z.object({ bib: z.int(), name: z.string().nullable() });

/** What the store tells the big screen of its day. */
export const dayBoardSchema = z.object({
  day: z
    .object({ title: z.string(), date: z.string(), state: z.enum(["planned", "open", "closed"]) })
    .nullable(),
  /** The newest bests, newest first. */
  newest: z.array(bestSchema),
  /** The newest first marks, newest first. */
  firsts: z.array(firstSchema),
  /**
   * The tests in order; rows by gain over the athlete's own earlier best, then equal marks, then first ones: one part of
   * them, from 1, where a screen asks for as many as it has room for.
   */
  walls: z.array(z.object({ test: testSchema, rows: z.array(rowSchema), part: z.int(), parts: z.int() })),
  /** Called athletes, by test in order, earliest call first. */
  calls: z.array(z.object({ test: testSchema, called: z.array(callSchema) })),
  /** Running heats, by test in order: the bibs of those who agreed to be shown and whom a lane holds, a list per heat. */
  heats: z.array(z.object({ test: testSchema, heats: z.array(z.array(z.int())) })),
  /**
   * Counts only of athletes who agreed to be shown: with everybody in them, the hidden ones' share could be worked out
   * by subtraction. None by league: leagues are not ranked either.
   */
  totals: z.object({
    bests: z.int(),
    /** How many bests there would be if nobody had changed: about. */
    bestsByChance: z.int(),
    firsts: z.int(),
    testsDone: z.int(),
    athletesTested: z.int(),
  }),
});

export type Board = z.infer<typeof dayBoardSchema> & {
  /** True while somebody at the desk has blanked it; everything else is then empty. */
  readonly hidden: boolean;
  /** True if all of this is invented. */
  readonly demo: boolean;
};
export type Best = z.infer<typeof bestSchema>;
export type First = z.infer<typeof firstSchema>;
export type BoardRow = z.infer<typeof rowSchema>;
export type Label = z.infer<typeof labelSchema>;
export type Gain = z.infer<typeof gainSchema>;
