import { z } from "zod";
import { holdingSchema } from "../../domain/backups/records.ts";
import { sentenceSchema } from "../door/shapes.ts";

const placeKind = z.enum(["own", "second"]);

export const stateSchema = z.object({
  /** In the demonstration nothing is backed up. */
  demo: z.boolean(),
  places: z.array(
    z.object({
      kind: placeKind,
      folder: z.string(),
      /** False while a stick is not plugged in. */
      there: z.boolean(),
      /** When the newest backup there was made (ISO 8601); null when nothing is known of one. */
      last: z.string().nullable(),
      trouble: sentenceSchema.nullable(),
    }),
  ),
  running: z.object({ step: z.enum(["copying", "own", "second"]), done: z.int(), total: z.int() }).nullable(),
  locked: z.boolean(),
  /** Whether earlier backups still hold somebody who was erased, since their place has not been reached since. */
  toForget: z.boolean(),
});

export const foundSchema = z.object({
  place: placeKind,
  name: z.string(),
  /** When it was made (ISO 8601). */
  at: z.string(),
  holding: holdingSchema,
  locked: z.boolean(),
  /** Made on this computer. */
  own: z.boolean(),
});

export const named = z.object({ place: placeKind, name: z.string().max(120) });
