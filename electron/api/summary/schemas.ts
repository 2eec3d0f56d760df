import { z } from "zod";
import { gapKinds } from "../../domain/summary/gaps.ts";
import { attemptSchema, stationPersonSchema, testSchema, toldSchema } from "../door/shapes.ts";

/** The shapes of a summary. Values, changes and spreads of marks are grains, times ms, instants ISO 8601. */
const whoSchema = stationPersonSchema.extend({
  state: z.enum(["expected", "testing", "not-testing", "no-show", "withdrawn"]),
});

const gapSchema = z.object({
  kind: z.enum(gapKinds),
  reason: z.string(),
  by: z.string(),
  /** What there is of a mark that is not complete. */
  mark: z
    .discriminatedUnion("state", [
      z.object({ state: z.literal("incomplete"), missing: z.array(z.string()).readonly() }),
      z.object({ state: z.literal("unfinished"), rounds: z.int(), reps: z.int() }),
    ])
    .nullable(),
});

const markSchema = toldSchema.omit({ written: true });

const spreadSchema = z.object({
  count: z.int(),
  median: z.number(),
  lower: z.number().nullable(),
  upper: z.number().nullable(),
  lowest: z.number(),
  highest: z.number(),
});

const rowSchema = z.object({
  who: whoSchema,
  tests: z.array(z.object({ test: testSchema, marks: z.array(markSchema), gap: gapSchema.nullable() })),
});

const count = z.int();
const countsSchema = z.object({
  test: testSchema,
  marks: count,
  standings: z.object({ first: count, best: count, equal: count, below: count }),
  verdicts: z.object({
    noise: count,
    "likely gain": count,
    "likely loss": count,
    "clear gain": count,
    "clear loss": count,
  }),
});

const correctionSchema = z.object({
  /** What no longer stands, with when, by whom and why. */
  attempt: attemptSchema,
  /** What was entered in its place; null where nothing was, or it was another league's. */
  instead: attemptSchema.nullable(),
});

const stationSchema = z.object({
  test: testSchema,
  atWork: spreadSchema.nullable(),
  perAthlete: spreadSchema.nullable(),
  leftOut: count,
  fromSheets: count,
});

const judgeSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("named"), name: z.string() }),
  z.object({ kind: z.literal("several") }),
  z.object({ kind: z.literal("unnamed") }),
]);

const judgeRowSchema = z.object({
  test: testSchema,
  variant: z.string(),
  judge: judgeSchema,
  marks: spreadSchema,
  cadences: z.object({ athletes: count, judged: count, off: count }).nullable(),
  compared: z
    .object({
      finding: z.enum(["too-few", "alike", "higher", "lower"]),
      own: spreadSchema.nullable(),
      others: spreadSchema.nullable(),
      shift: z.object({ amount: z.number(), low: z.number(), high: z.number() }).nullable(),
    })
    .nullable(),
});

const errorSchema = z.object({
  test: testSchema,
  kind: z.enum(["grains", "share"]),
  amount: z.number(),
  assumed: z.boolean(),
  pairs: z.int(),
  starting: z.number(),
});

export const whichSummarySchema = z.object({
  /** Without it the day at hand, else the newest one held. */
  dayId: z.int().optional(),
  leagueId: z.int().nullable().default(null),
});

export const summarySchema = z.object({
  day: z.object({
    id: z.int(),
    date: z.string(),
    title: z.string(),
    state: z.enum(["planned", "open", "closed"]),
  }),
  /** Those with somebody on the day's list, by name. */
  leagues: z.array(z.object({ id: z.int(), name: z.string(), listed: z.int() })),
  /** Null: the whole day. */
  league: z.object({ id: z.int(), name: z.string() }).nullable(),
  totals: z.object({
    listed: count,
    came: count,
    measured: count,
    whole: count,
    firsts: count,
    bests: count,
    clearGains: count,
  }),
  tests: z.array(countsSchema),
  rows: z.array(rowSchema),
  missing: z.array(gapSchema.extend({ who: whoSchema, tests: z.array(testSchema) })),
  corrections: z.array(correctionSchema),
  stations: z.array(stationSchema),
  judges: z.array(judgeRowSchema),
  errors: z.array(errorSchema),
});

export type WhichSummary = z.infer<typeof whichSummarySchema>;
export type Summary = z.infer<typeof summarySchema>;
