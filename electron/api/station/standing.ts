import { z } from "zod";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";
import { attemptSchema, toldSchema } from "../door/shapes.ts";
import { attemptView, stationPersonOf, tellOne } from "../marks/attempts.ts";
import { attemptChain } from "./history.ts";
import { requirePresent } from "./who.ts";

export const standingSchema = z.object({
  /** The attempt itself, or the newest correction of it; void if nothing stands any more. */
  attempt: attemptSchema,
  /** True if it corrects another one. */
  corrected: z.boolean(),
  /** Its athlete's mark of today in that variant; null without standing attempts. */
  told: toldSchema.nullable(),
});

/**
 * Returns what stands in the place of an attempt, however often it was corrected since.
 * @throws Refusal `not-found` for an attempt that is not of this day.
 */
export function standing(
  db: ReadableDb,
  day: Day,
  { attemptId, lengths }: { readonly attemptId: string; readonly lengths: LengthUnit },
): z.infer<typeof standingSchema> {
  const chain = attemptChain(db, day, attemptId);
  const newest = chain.findLast((each) => each.void === null) ?? chain.at(-1);
  // A chain has at least the attempt that was asked for.
  if (newest === undefined) throw new Error(`Attempt ${attemptId} has no history.`);
  const who = stationPersonOf(requirePresent(db, day, newest.athleteId));
  return {
    attempt: attemptView(newest, who),
    corrected: newest.replaces !== null,
    told: tellOne(db, day, newest, lengths),
  };
}
