import { z } from "zod";
import { holdingSchema } from "../../domain/backups/records.ts";
import { sentenceSchema } from "../door/shapes.ts";

const placeKind = z.enum(["own", "second"]);

export const stateSchema = z.object({
  /** True in the demo, where nothing is backed up. */
  demo: z.boolean(),
  places: z.array(
    z.object({
      kind: placeKind,
      folder: z.string(),
      /** False while a stick is unplugged. */
      there: z.boolean(),
      /** Time of the newest backup there (ISO 8601); null when none is known. */
      last: z.string().nullable(),
      trouble: sentenceSchema.nullable(),
    }),
  ),
  running: z.object({ step: z.enum(["copying", "own", "second"]), done: z.int(), total: z.int() }).nullable(),
  locked: z.boolean(),
  /** True while earlier backups still hold somebody erased, in a place that has not been reached since. */
  toForget: z.boolean(),
});

export const foundSchema = z.object({
  place: placeKind,
  name: z.string(),
  /** Time of making (ISO 8601). */
  at: z.string(),
  holding: holdingSchema,
  locked: z.boolean(),
  /** True for a backup made on this computer. */
  own: z.boolean(),
});

export const named = z.object({ place: placeKind, name: z.string().max(120) });
