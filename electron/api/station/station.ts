import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { attemptById } from "../../store/tables/attempts.ts";
import { endCallTo } from "../../store/tables/calls.ts";
import { voidAttempt } from "../../store/tables/record.ts";
import { requireDay, requireOpenDay } from "../door/at-hand.ts";
import { asker, keyer } from "../door/own-station.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { lengthsSchema, testSchema, toldSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { tellOne } from "../marks/attempts.ts";
import { enter, enteredSchema, entrySchema } from "./enter.ts";
import { find, foundSchema } from "./find.ts";
import { history, historySchema, whichHistorySchema } from "./history.ts";
import { keptSchema, lacks, lacksSchema, standing, standingSchema } from "./standing.ts";
import { call, callNext, skip, unskip } from "./turns.ts";
import { view } from "./view.ts";

const athleteAndTest = z.object({ athleteId: z.int(), test: testSchema });

/** The station of one test: its queue, its attempts, and their marks. */
export const station = router({
  /** `most`: the longest part of the queue that is wanted; all of it if left out. */
  view: keyer(
    z.object({
      test: testSchema,
      lengths: lengthsSchema,
      most: z.int().min(0).default(Number.MAX_SAFE_INTEGER),
    }),
  ).query(({ ctx: { desk, who, ...ctx }, input }) => {
    const { db } = desk.store;
    const now = desk.now().toISOString();
    const seen = view(db, requireDay(db), { ...input, holder: asker(ctx), now });
    return who === "organiser" ? seen : { ...seen, skipped: [] };
  }),

  /** Finds an athlete by a typed bib, with their standing attempts. */
  find: keyer(z.object({ test: testSchema, bib: z.string().max(40), lengths: lengthsSchema }))
    .output(foundSchema)
    .query(({ ctx: { desk }, input }) =>
      find(desk.store.db, requireOpenDay(desk.store.db), input, desk.now().toISOString()),
    ),

  /** Enters attempts, or corrects one. */
  enter: keyer(entrySchema)
    .output(enteredSchema)
    .mutation(({ ctx: { desk }, input }) => enter(desk, input)),

  /** Returns what the store lacks of a device's own entries, and whom it must forget. */
  lacks: keyer(keptSchema.extend({ test: testSchema }))
    .output(lacksSchema)
    .query(({ ctx: { desk }, input }) => lacks(desk.store.db, requireDay(desk.store.db), input)),

  /** Voids an attempt without replacing it. Voiding it twice changes nothing. */
  void: keyer(
    z.object({
      attemptId: z.string().max(100),
      reason: reasonSchema,
      by: initialsSchema,
      lengths: lengthsSchema,
    }),
  )
    .output(z.object({ told: toldSchema.nullable() }))
    .mutation(({ ctx: { desk }, input }) => {
      const ending = { reason: input.reason, by: input.by, at: desk.now().toISOString() };
      return desk.store.write(["attempts"], (db) => {
        const day = requireOpenDay(db);
        const attempt = attemptById(db, input.attemptId);
        if (attempt === undefined) throw new Refusal("not-found", sentence("record.unknownAttempt"));
        if (attempt.dayId !== day.id) throw new Refusal("conflict", sentence("station.otherAttempt"));
        voidAttempt(db, input.attemptId, ending);
        return { told: tellOne(db, day, attempt, input.lengths) };
      });
    }),

  /**
   * What stands in the place of an attempt now: itself, its newest correction, or nothing any more. `test` is the attempt's own;
   * whoever asks reads it again when that test's station changes, and at no other change.
   */
  standing: keyer(z.object({ test: testSchema, attemptId: z.string().max(100), lengths: lengthsSchema }))
    .output(standingSchema)
    .query(({ ctx: { desk }, input }) => standing(desk.store.db, requireDay(desk.store.db), input)),

  history: keyer(whichHistorySchema)
    .output(historySchema)
    .query(({ ctx: { desk }, input }) => history(desk.store.db, requireDay(desk.store.db), input)),

  /** Lets an athlete skip a test, with a reason. */
  skip: allow("organiser")
    .input(athleteAndTest.extend({ reason: reasonSchema, by: initialsSchema }))
    .mutation(({ ctx: { desk }, input }) => {
      const decision = { reason: input.reason, decidedBy: input.by, at: desk.now().toISOString() };
      desk.store.write(["entrants", "calls"], (db) => skip(db, requireOpenDay(db), input, decision));
    }),

  unskip: allow("organiser")
    .input(athleteAndTest)
    .mutation(({ ctx: { desk }, input }) => {
      desk.store.write(["entrants"], (db) => unskip(db, requireOpenDay(db), input.athleteId, input.test));
    }),

  /** Calls an athlete to this station; calling again changes nothing. (`call` itself is a reserved word of tRPC.) */
  callAthlete: keyer(athleteAndTest).mutation(({ ctx: { desk, ...ctx }, input: { athleteId, test } }) => {
    const wanted = { test, holder: asker(ctx), at: desk.now().toISOString() };
    desk.store.write(["calls"], (db) => call(db, requireOpenDay(db), athleteId, wanted));
  }),

  /** Ends the call to this station, but not one to another. */
  uncall: keyer(athleteAndTest).mutation(({ ctx: { desk }, input }) => {
    desk.store.write(["calls"], (db) => endCallTo(db, requireOpenDay(db).id, input.athleteId, input.test));
  }),

  callNext: keyer(z.object({ test: testSchema }))
    .output(z.object({ athleteId: z.int() }))
    .mutation(({ ctx: { desk, ...ctx }, input: { test } }) => {
      const wanted = { test, holder: asker(ctx), at: desk.now().toISOString() };
      return desk.store.write(["calls"], (db) => ({
        athleteId: callNext(db, requireOpenDay(db), wanted),
      }));
    }),
});
