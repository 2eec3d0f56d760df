import { z } from "zod";
import { testCodes } from "../../domain/tests/registry.ts";

/** The schemas shared by the stations. Instants are ISO 8601; values and gains are grains. */
export const testSchema = z.enum(testCodes);
export const lengthsSchema = z.enum(["cm", "in"]).default("cm");

export const sentenceSchema = z.object({
  key: z.string(),
  values: z.record(z.string(), z.union([z.string(), z.number()])).exactOptional(),
});

export const writtenSchema = z.object({
  number: z.string(),
  unit: z.enum(["reps", "landings", "cm", "in", "min:s", ""]),
  note: sentenceSchema.exactOptional(),
});

export const markSchema = z.discriminatedUnion("state", [
  z.object({
    state: z.literal("complete"),
    value: z.int(),
    trials: z.object({ done: z.int(), of: z.int() }).exactOptional(),
  }),
  z.object({ state: z.literal("incomplete"), missing: z.array(z.string()).readonly() }),
  z.object({ state: z.literal("unfinished"), rounds: z.int(), reps: z.int() }),
]);

const newsSchema = z.object({
  standing: z.enum(["first", "best", "equal", "below"]),
  earlier: z.int(),
  bestBefore: z.number().nullable(),
  gainOverBest: z.number().nullable(),
  previous: z.number().nullable(),
  previousDate: z.string().nullable(),
  level: z.number().nullable(),
  change: z.number().nullable(),
  /** The change without what knowing the test adds to it. */
  beyond: z.number().nullable(),
  verdict: z.enum(["noise", "likely gain", "likely loss", "clear gain", "clear loss"]).nullable(),
  byChance: z.number().nullable(),
  chanceReal: z.number().nullable(),
});

/** A mark of today: its text, and its rank in the athlete's own history. No change is told of what can't be compared. */
export const toldSchema = z.object({
  variant: z.string(),
  mark: markSchema,
  written: writtenSchema,
  news: newsSchema.nullable(),
  /** In what it was made otherwise than the one that it is compared with: trials, position in the day, rest, reps of a stop. */
  beside: z.array(sentenceSchema),
});

export const stationPersonSchema = z.object({
  athleteId: z.int(),
  bib: z.int().nullable(),
  name: z.string(),
  number: z.string(),
  league: z.string(),
});

/** The name of the station's other device that called this athlete; null for nobody, the table, or who asks. */
export const calledElsewhereSchema = z.string().nullable();

/** A person as a sheet, the store or its history has them; a league alone has an empty name. */
export interface SaidPerson {
  readonly name: string;
  readonly number: string;
  readonly league: string;
  readonly birthYear: number | null;
}

/** An attempt with its athlete; `seen` follows the test's own attempt schema. */
export const attemptSchema = z.object({
  attemptId: z.string(),
  who: stationPersonSchema,
  test: testSchema,
  variant: z.string(),
  seen: z.unknown(),
  by: z.string(),
  at: z.string(),
  note: z.string(),
  source: z.enum(["station", "sheet", "heat"]),
  void: z.object({ reason: z.string(), by: z.string(), at: z.string() }).nullable(),
  replaces: z.string().nullable(),
});

export type Told = z.infer<typeof toldSchema>;
export type StationPerson = z.infer<typeof stationPersonSchema>;
export type AttemptView = z.infer<typeof attemptSchema>;
