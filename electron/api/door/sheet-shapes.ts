import { z } from "zod";
import { sheetKinds } from "../../sheets/headers.ts";
import { sentenceSchema } from "./shapes.ts";

const countsSchema = z.object({
  new: z.int(),
  changed: z.int(),
  known: z.int(),
  joined: z.int(),
  keptBack: z.int(),
  unusual: z.int(),
});

const reasonSchema = z.object({ field: z.string().nullable(), reason: sentenceSchema });

const keptBackSchema = reasonSchema.extend({
  line: z.int(),
  /** The row's other faults. */
  also: z.array(reasonSchema),
  cells: z.array(z.string()),
});

export const takenSchema = z.object({
  kind: z.enum(sheetKinds),
  counts: countsSchema,
  keptBack: z.array(keptBackSchema),
});
