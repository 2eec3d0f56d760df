import { z } from "zod";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { athleteById, wasDeleted } from "../../store/tables/athletes.ts";
import { attemptById } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { entrantOf } from "../../store/tables/entrants.ts";
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

/** Most ids of a question: its address has to fit into a request's headers. */
const most = 80;

export const keptSchema = z.object({
  attemptIds: z.array(z.string().max(100)).max(most),
  athleteIds: z.array(z.int()).max(most),
});

export const lacksSchema = z.object({
  /** Those attempts that the store does not have. */
  attemptIds: z.array(z.string()),
  /** Those that it has and that count. */
  standing: z.array(z.string()),
  /** The bibs that athletes have today; null without one. Athletes that the store never had are left out. */
  bibs: z.array(z.object({ athleteId: z.int(), bib: z.int().nullable() })),
  /** Athletes that were deleted. */
  deleted: z.array(z.int()),
});

/** Compares what a device keeps of its own entries with the store, which may have come back from an earlier backup. */
export function lacks(
  db: ReadableDb,
  day: Day,
  { attemptIds, athleteIds }: z.infer<typeof keptSchema>,
): z.infer<typeof lacksSchema> {
  const known = new Map(attemptIds.map((id) => [id, attemptById(db, id)]));
  const here = athleteIds.filter((athleteId) => athleteById(db, athleteId) !== undefined);
  return {
    attemptIds: attemptIds.filter((id) => known.get(id) === undefined),
    standing: attemptIds.filter((id) => known.get(id)?.void === null),
    bibs: here.map((athleteId) => ({ athleteId, bib: entrantOf(db, day.id, athleteId)?.bib ?? null })),
    deleted: athleteIds.filter((athleteId) => wasDeleted(db, athleteId)),
  };
}
