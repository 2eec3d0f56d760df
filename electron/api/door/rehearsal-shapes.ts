import { z } from "zod";
import { sheetKinds } from "../../sheets/headers.ts";
import { sentenceSchema } from "./shapes.ts";
import { takenSchema } from "./sheet-shapes.ts";

/** What a person can say of a sheet as a whole, and how it was read without that. */
const formSchema = z.object({
  kind: z.enum(sheetKinds),
  missing: z.array(z.string()),
  fields: z.array(z.object({ field: z.string(), header: z.string().nullable() })),
  headerLine: z.int(),
  start: z.array(z.object({ line: z.int(), text: z.string() })),
  worksheets: z.array(z.string()),
  worksheet: z.int(),
  asksDateOrder: z.boolean(),
  asked: z.array(z.object({ name: z.string(), options: z.array(z.string()) })),
});

/** The steps of a rehearsal, in order. */
export const rehearsalSteps = ["roster", "past", "checkIn", "results", "end"] as const;

const lineSchema = z.object({ line: z.int(), sentence: sentenceSchema });

/** The result for one sheet. */
const sheetSchema = z.object({
  kind: z.enum(sheetKinds),
  /** The file's name; empty for results that the rehearsal invented. */
  file: z.string(),
  /** Null where nothing was read of it. */
  form: formSchema.nullable(),
  /** True for results that no sheet had: made up to hold a whole day. */
  invented: z.boolean(),
  taken: z.int(),
  /** Number of rows not imported, and the first of them. */
  keptBack: z.int(),
  keptBackRows: takenSchema.shape.keptBack,
  /** Number of rows that a station would have questioned, and the first of them. */
  unusual: z.int(),
  unusualRows: z.array(lineSchema),
  /** Headers of ignored columns. */
  unknown: z.array(z.string()),
  /** The reason why the whole sheet was unusable; null if it was usable. */
  refused: sentenceSchema.nullable(),
});

const rehearsedSchema = z.object({
  /** The rehearsed day, ISO 8601. */
  date: z.string(),
  sheets: z.array(sheetSchema),
  admitted: z.int(),
  /** Athletes who may be under 18 and have no guardian's consent on the roster. */
  askGuardian: z.array(z.object({ name: z.string(), league: z.string(), number: z.string() })),
  marks: z.object({
    first: z.int(),
    best: z.int(),
    equal: z.int(),
    below: z.int(),
    /** Number of tests begun without a mark. */
    open: z.int(),
  }),
  /** Rows that could be shared, and marks that would be withheld. */
  bundle: z.object({ rows: z.int(), held: z.int() }),
  /** When a simulated day of these people ended, and the span told of it at some points of it: seconds from its beginning. */
  foreseen: z
    .object({
      ends: z.number(),
      points: z.array(z.object({ at: z.number(), from: z.number(), until: z.number() })),
    })
    .nullable(),
  /** All rows not imported, with sheet, line and reason, to save. */
  keptBackSheet: z.object({ name: z.string(), text: z.string() }),
});

export type RehearsedDay = z.infer<typeof rehearsedSchema>;

export const rehearsalStage = z.discriminatedUnion("stage", [
  z.object({ stage: z.literal("working"), step: z.enum(rehearsalSteps), done: z.int(), total: z.int() }),
  z.object({
    stage: z.literal("refused"),
    sheet: z.enum(sheetKinds),
    sentence: sentenceSchema,
    file: z.string(),
    form: formSchema.nullable(),
  }),
  z.object({ stage: z.literal("done"), rehearsed: rehearsedSchema }),
]);

export type SheetForm = z.infer<typeof formSchema>;
export type RehearsalStage = z.infer<typeof rehearsalStage>;
