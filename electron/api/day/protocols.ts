import { z } from "zod";
import { leastRestMinutes, mostRestMinutes } from "../../domain/queue/rest.ts";
import { Refusal } from "../../domain/refusal.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import {
  parseParameters,
  protocolOf,
  refusalOf,
  type TestCode,
  testCodes,
} from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import { setDayProtocol, setDayRest } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { requireDay } from "../door/at-hand.ts";
import { testSchema } from "../door/shapes.ts";
import { allow } from "../door/trpc.ts";

/** Checks and returns the parameters of one test. @throws Refusal `bad-input` that says why they are not usable. */
export function readParameters(test: TestCode, given: unknown): unknown {
  const parsed = parseParameters(test, given);
  if (parsed.success) return parsed.data;
  const told = refusalOf(parsed.error);
  const ownRule = !told.key.startsWith("marks.");
  throw new Refusal("bad-input", ownRule ? told : sentence("day.badParameters", { test }));
}

/** Returns the rules of each test on the current day, and the fingerprints (one per variant) that marks compare by. */
export const protocols = allow("organiser", "check-in", "station")
  .output(
    z.array(
      z.object({
        test: testSchema,
        /** Parse with the test's own schema. */
        parameters: z.unknown(),
        fingerprints: z.array(z.string()),
        /** True if all parameters are standard. */
        standard: z.boolean(),
      }),
    ),
  )
  .query(({ ctx: { desk } }) => {
    const { db } = desk.store;
    const day = requireDay(db);
    return testCodes.map((test) => {
      const { variants, defaults } = protocolOf(test);
      const parameters = parametersOf(db, day.id, test);
      return {
        test,
        parameters,
        fingerprints: variants.map((variant) => fingerprint(test, variant, parameters)),
        standard: fingerprint(test, "", parameters) === fingerprint(test, "", defaults),
      };
    });
  });

/** Changes the rules of a test, until the day opens. */
export const setProtocol = allow("organiser")
  .input(z.object({ test: testSchema, parameters: z.unknown() }))
  .mutation(({ ctx: { desk }, input: { test, parameters } }) =>
    desk.store.write(["day"], (db) => {
      const day = requireDay(db);
      if (day.state !== "planned") throw new Refusal("conflict", sentence("day.frozen"));
      setDayProtocol(db, day.id, { test, parameters: readParameters(test, parameters) });
    }),
  );

/** A rest that can be set now; days that were stored with less open as they are. */
export const restSchema = z.int().min(leastRestMinutes).max(mostRestMinutes);

/** Changes the rest between two tests, also while the day is held: queues follow, and no mark depends on it. */
export const setRest = allow("organiser")
  .input(z.object({ restMinutes: restSchema }))
  .mutation(({ ctx: { desk }, input }) =>
    desk.store.write(["day"], (db) => setDayRest(db, requireDay(db).id, input.restMinutes)),
  );
