import { z } from "zod";
import { sheetKinds } from "../../sheets/headers.ts";
import { sentenceSchema } from "./shapes.ts";
import { takenSchema } from "./sheet-shapes.ts";

/** What a rehearsal does, in this order. */
export const rehearsalSteps = ["roster", "past", "checkIn", "results", "end"] as const;

const lineSchema = z.object({ line: z.int(), sentence: sentenceSchema });

/** What became of one sheet. */
const sheetSchema = z.object({
  kind: z.enum(sheetKinds),
  taken: z.int(),
  /** How many rows stay outside, and the first of them. */
  keptBack: z.int(),
  keptBackRows: takenSchema.shape.keptBack,
  /** How many rows a station would have asked about, and the first of them. */
  unusual: z.int(),
  unusualRows: z.array(lineSchema),
  /** Headers of columns that were passed over. */
  unknown: z.array(z.string()),
  /** Why the sheet as a whole could not be used; null when it could. */
  refused: sentenceSchema.nullable(),
});

const rehearsedSchema = z.object({
  /** The day that was tried out, ISO 8601. */
  date: z.string(),
  sheets: z.array(sheetSchema),
  admitted: z.int(),
  /** Who may be under 18 without a guardian's consent on the roster. */
  askGuardian: z.array(z.object({ name: z.string(), league: z.string(), number: z.string() })),
  marks: z.object({
    first: z.int(),
    best: z.int(),
    equal: z.int(),
    below: z.int(),
    /** Tests that were begun and have no mark. */
    open: z.int(),
  }),
  /** Rows that could be shared, and marks that would stay. */
  bundle: z.object({ rows: z.int(), held: z.int() }),
  /** All rows that stay outside, with sheet, line and reason, to save. */
  keptBackSheet: z.object({ name: z.string(), text: z.string() }),
});

export type RehearsedDay = z.infer<typeof rehearsedSchema>;

export const rehearsalStage = z.discriminatedUnion("stage", [
  z.object({ stage: z.literal("working"), step: z.enum(rehearsalSteps), done: z.int(), total: z.int() }),
  z.object({ stage: z.literal("refused"), sheet: z.enum(sheetKinds), sentence: sentenceSchema }),
  z.object({ stage: z.literal("done"), rehearsed: rehearsedSchema }),
]);

export type RehearsalStage = z.infer<typeof rehearsalStage>;
