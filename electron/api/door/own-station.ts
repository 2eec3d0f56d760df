import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { attemptById } from "../../store/tables/attempts.ts";
import { heatById } from "../../store/tables/heats.ts";
import { allow } from "./trpc.ts";

/** The fields by which an input says which station it is about. */
const about = z.object({
  test: z.enum(testCodes).optional(),
  heatId: z.string().optional(),
  again: z.string().optional(),
  attemptId: z.string().optional(),
  replaces: z.object({ attemptId: z.string() }).optional(),
});

/**
 * Makes a procedure for whoever enters results, with its input's schema. A desk handed over to one station may only
 * touch that one: the input's test, heat or attempt is looked up here, once for all procedures. Where nothing can be
 * looked up the answer is no. Only fields of the schema count: a field that the procedure does not use must not vouch
 * for one that it does.
 */
export function keyer<Schema extends z.ZodObject | z.ZodUnion<readonly z.ZodObject[]>>(schema: Schema) {
  return allow("organiser", "station")
    .input(schema)
    .use(({ ctx, next, input }) => {
      const own = ctx.station ?? null;
      if (ctx.who !== "station" || own === null) return next();
      const named = testsNamed(ctx.desk.store.db, about.parse(input));
      if (named.length === 0 || named.some((test) => test !== own)) {
        throw new Refusal("forbidden", sentence("door.otherStation"));
      }
      return next();
    });
}

/** Returns every test that the input is about. An unknown id names none; its maker named the test too. */
function testsNamed(db: ReadableDb, input: z.infer<typeof about>): TestCode[] {
  const { test, heatId, again, attemptId, replaces } = input;
  return [
    test,
    heatId === undefined ? undefined : heatById(db, heatId)?.test,
    again === undefined ? undefined : heatById(db, again)?.test,
    attemptId === undefined ? undefined : attemptById(db, attemptId)?.test,
    replaces === undefined ? undefined : attemptById(db, replaces.attemptId)?.test,
  ].filter((each) => each !== undefined);
}
