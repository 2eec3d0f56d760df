import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { attemptById, attemptsOfAthlete, chainOf, type KeptAttempt } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { attemptSchema, testSchema } from "../door/shapes.ts";
import { attemptView, stationPersonOf } from "../marks/attempts.ts";
import { requirePresent } from "./who.ts";

/** The history wanted: of one attempt with its chain of corrections, or of one athlete's test today. */
export const whichHistorySchema = z.union([
  z.object({ attemptId: z.string().max(100) }),
  z.object({ athleteId: z.int(), test: testSchema }),
]);

/** In the order of entry. */
export const historySchema = z.array(
  z.object({
    attempt: attemptSchema,
    /** Ids of the attempts that replaced this one. */
    replacedBy: z.array(z.string()),
  }),
);

/** @throws Refusal `not-found` for an attempt or an athlete that is not of this day. */
export function history(
  db: ReadableDb,
  day: Day,
  which: z.infer<typeof whichHistorySchema>,
): z.infer<typeof historySchema> {
  const attempts =
    "attemptId" in which
      ? attemptChain(db, day, which.attemptId)
      : ofTest(db, day, which.athleteId, which.test);
  return attempts.map((attempt) => ({
    attempt: attemptView(attempt, stationPersonOf(requirePresent(db, day, attempt.athleteId))),
    replacedBy: attempts.filter((each) => each.replaces === attempt.id).map(({ id }) => id),
  }));
}

/**
 * Returns an attempt with all that it corrects and all that correct it, in the order of entry.
 * @throws Refusal `not-found` for an attempt that is not of this day.
 */
export function attemptChain(db: ReadableDb, day: Day, attemptId: string): KeptAttempt[] {
  if (attemptById(db, attemptId)?.dayId !== day.id) {
    throw new Refusal("not-found", sentence("record.unknownAttempt"));
  }
  return chainOf(db, attemptId);
}

/** Returns the athlete's attempts, and others' attempts that correct them. */
function ofTest(db: ReadableDb, day: Day, athleteId: number, test: TestCode): KeptAttempt[] {
  const who = requirePresent(db, day, athleteId);
  const own = attemptsOfAthlete(db, day.id, who.athleteId).filter((attempt) => attempt.test === test);
  const all = new Map(own.flatMap(({ id }) => chainOf(db, id)).map((attempt) => [attempt.id, attempt]));
  return [...all.values()].sort((a, b) => a.seq - b.seq);
}
