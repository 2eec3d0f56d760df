import { z } from "zod";
import { nextTest } from "../../domain/queue/order.ts";
import { waitFor } from "../../domain/queue/queue.ts";
import { queuePlaceOf } from "../../domain/queue/tally.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import { everybody } from "../../store/reads/present.ts";
import { calls } from "../../store/tables/calls.ts";
import { requireDay } from "../door/at-hand.ts";
import { stationPersonSchema, testSchema } from "../door/shapes.ts";
import { allow } from "../door/trpc.ts";
import { runnersOf } from "../station/view.ts";

const whereabouts = z.object({
  who: stationPersonSchema,
  /** In the order of the tests. */
  tests: z.array(z.object({ test: testSchema, place: z.enum(["done", "leftOut", "waiting", "later"]) })),
  next: testSchema.nullable(),
  /** The test they are called to, if any. */
  calledTo: testSchema.nullable(),
  /** Start of the wait for the next test, and end of the rest; null when finished. */
  waitingSince: z.string().nullable(),
  readyAt: z.string().nullable(),
});

/** Returns the state of everybody who tests today in every test, by bib. */
export const floor = allow("organiser")
  .output(z.array(whereabouts))
  .query(({ ctx: { desk } }) => {
    const { db } = desk.store;
    const day = requireDay(db);
    const people = new Map(everybody(db, day.id).map((who) => [who.athleteId, who]));
    const called = new Map(calls(db, day.id).map((call) => [call.athleteId, call.test]));
    return runnersOf(db, day, desk.now().toISOString()).flatMap((runner) => {
      const who = people.get(runner.athleteId);
      if (who === undefined) return [];
      const { done, leftOut } = runner;
      const next = nextTest(done, leftOut);
      const wait = next === null ? null : waitFor(next, runner, day.restMinutes);
      return {
        who,
        tests: testCodes.map((test) => ({ test, place: queuePlaceOf(test, done, leftOut) })),
        next,
        calledTo: called.get(runner.athleteId) ?? null,
        waitingSince: wait?.waitingSince ?? null,
        readyAt: wait?.readyAt ?? null,
      };
    });
  });
