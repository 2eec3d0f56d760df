import { z } from "zod";
import { type TestCode, testCodes } from "../domain/protocols/protocol.ts";
import { Refusal } from "../domain/refusal.ts";
import { sentence } from "../domain/words.ts";
import { attemptById } from "../store/attempts.ts";
import { calls } from "../store/calls.ts";
import type { Database } from "../store/database.ts";
import { dayAtHand } from "../store/days.ts";
import { heatById } from "../store/heats.ts";
import { allow } from "./trpc.ts";

/** The ways in which the input of a station's procedure says which station it is about. */
const about = z.object({
  test: z.enum(testCodes).optional().catch(undefined),
  heatId: z.string().optional().catch(undefined),
  again: z.string().optional().catch(undefined),
  attemptId: z.string().optional().catch(undefined),
  athleteId: z.number().optional().catch(undefined),
  replaces: z.object({ attemptId: z.string() }).optional().catch(undefined),
});

/**
 * A procedure for those who key. A desk that was handed over to one station may only touch that one: what the input
 * names (a test, a heat, an attempt, a call) is looked up here, once for all of them, and where it names nothing that
 * can be looked up the answer is no.
 */
export const keyer = allow("organiser", "station").use(async ({ ctx, next, getRawInput }) => {
  const own = ctx.station ?? null;
  if (ctx.who !== "station" || own === null) return next();
  const { data } = about.safeParse(await getRawInput());
  const named = data === undefined ? [] : testsNamed(ctx.desk.store.db, data);
  if (named.length === 0 || named.some((test) => test !== own)) {
    throw new Refusal("forbidden", sentence("door.otherStation"));
  }
  return next();
});

/** Every test that the input is about. An id that nothing has yet names none; whoever made it up named the test too. */
function testsNamed(db: Database, input: z.infer<typeof about>): TestCode[] {
  const { test, heatId, again, attemptId, replaces } = input;
  const named = [
    test,
    heatId === undefined ? undefined : heatById(db, heatId)?.test,
    again === undefined ? undefined : heatById(db, again)?.test,
    attemptId === undefined ? undefined : attemptById(db, attemptId)?.test,
    replaces === undefined ? undefined : attemptById(db, replaces.attemptId)?.test,
  ].filter((each) => each !== undefined);
  return named.length > 0 ? named : testsCalled(db, input.athleteId);
}

/** Where somebody is called to, for what names a person alone. */
function testsCalled(db: Database, athleteId: number | undefined): TestCode[] {
  const day = dayAtHand(db);
  if (day === undefined || athleteId === undefined) return [];
  return calls(db, day.id)
    .filter((call) => call.athleteId === athleteId)
    .map(({ test }) => test);
}
