import { z } from "zod";
import type { JoinedDevice } from "../../domain/devices/place.ts";
import { Refusal } from "../../domain/refusal.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { attemptById } from "../../store/tables/attempts.ts";
import { type Heat, type Holder, heatById } from "../../store/tables/heats.ts";
import { allow } from "./trpc.ts";

/** The part of the context that says whether a device asks. */
interface Asker {
  readonly device?: JoinedDevice | null | undefined;
}

/** The fields by which an input says which station it is about. */
const about = z.object({
  test: z.enum(testCodes).optional(),
  heatId: z.string().optional(),
  again: z.string().optional(),
  holder: z.string().nullable().optional(),
  attemptId: z.string().optional(),
  attemptIds: z.array(z.string()).default([]),
  replaces: z.object({ attemptId: z.string() }).optional(),
});

/**
 * Makes a procedure for whoever enters results, with its input's schema. A desk handed over to one station may only
 * touch that one: the input's test, heat or attempt is looked up here, once for all procedures. Where nothing can be
 * looked up the answer is no. Only fields of the schema count: a field that the procedure does not use must not vouch
 * for one that it does.
 *
 * Of its station's heats it may only touch those that it gathered itself, whether it is a device on the network or the
 * table's own window: the organiser alone touches everybody's.
 */
export function keyer<Schema extends z.ZodObject | z.ZodUnion<readonly z.ZodObject[]>>(schema: Schema) {
  return allow("organiser", "station")
    .input(schema)
    .use(({ ctx, next, input }) => {
      const own = ctx.station ?? null;
      if (ctx.who !== "station" || own === null) return next();
      const { db } = ctx.desk.store;
      const said = about.parse(input);
      const heats = heatsNamed(db, said);
      const named = testsNamed(db, heats, said);
      if (named.length === 0 || named.some((test) => test !== own)) {
        throw new Refusal("forbidden", sentence("door.otherStation"));
      }
      if (holdersNamed(heats, said).some((holder) => holder !== asker(ctx))) {
        throw new Refusal("forbidden", sentence("heat.ofOther"));
      }
      return next();
    });
}

/** Returns the holder of what this caller calls and gathers: the device that asks, or the table. */
export function asker({ device }: Asker): Holder {
  return device?.id ?? null;
}

/** Returns whose heat a caller means who names one: a device its own, the table that one's, or a new one of its own. */
export function holderFor(db: ReadableDb, ctx: Asker, heatId: string): Holder {
  return asker(ctx) ?? heatById(db, heatId)?.holder ?? null;
}

/** Returns whose heat a caller looks at: a device sees its own, the table the one it names, or its own. */
export function holderSeen(ctx: Asker, named: Holder | undefined): Holder {
  return asker(ctx) ?? named ?? null;
}

/** Returns the heats that the input names and the store knows. */
function heatsNamed(db: ReadableDb, { heatId, again }: z.infer<typeof about>): Heat[] {
  return [heatId, again].flatMap((id) => (id === undefined ? [] : (heatById(db, id) ?? [])));
}

/** Returns the holders of the heats that the input is about, and the one that it names. */
function holdersNamed(heats: readonly Heat[], { holder }: z.infer<typeof about>): Holder[] {
  return [...heats.map((heat) => heat.holder), ...(holder === undefined ? [] : [holder])];
}

/** Returns every test that the input is about. An unknown id names none; its maker named the test too. */
function testsNamed(db: ReadableDb, heats: readonly Heat[], said: z.infer<typeof about>): TestCode[] {
  const { test, attemptId, attemptIds, replaces } = said;
  const attempts = [attemptId, ...attemptIds, replaces?.attemptId].filter((id) => id !== undefined);
  return [test, ...heats.map((heat) => heat.test), ...attempts.map((id) => attemptById(db, id)?.test)].filter(
    (each) => each !== undefined,
  );
}
