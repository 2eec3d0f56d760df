import { z } from "zod";

/** A mark's place in a reference group; nothing in it identifies any of the others. */
const placeSchema = z.object({
  /**
   * today: athletes who test today. store: every day of this store. imported: a reference from elsewhere. mixed: one
   * without reported categories.
   */
  group: z.enum(["today", "store", "imported", "mixed"]),
  /** Name of an imported reference; null for the store's own groups. */
  origin: z.string().nullable(),
  /** Number of marks it was compared with. */
  n: z.int(),
  /** Better than about `low` to `high` of a hundred: whole numbers from 0 to 100. */
  low: z.int(),
  high: z.int(),
});

export type PlaceAmongOthers = z.infer<typeof placeSchema>;
