import { z } from "zod";

/** Where a mark stands in a reference group; nothing in it tells one of the others from another. */
export const placeSchema = z.object({
  /**
   * today: those who test today. store: every day of this store. imported: a reference from elsewhere. mixed: one of
   * athletes whose category was not told.
   */
  group: z.enum(["today", "store", "imported", "mixed"]),
  /** What an imported reference is called; null for the store's own. */
  origin: z.string().nullable(),
  /** The marks that it was compared with. */
  n: z.int(),
  /** Better than about `low` to `high` of a hundred: whole numbers from 0 to 100. */
  low: z.int(),
  high: z.int(),
});

export type PlaceAmongOthers = z.infer<typeof placeSchema>;
