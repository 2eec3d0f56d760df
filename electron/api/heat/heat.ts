import { z } from "zod";
import { requireDay } from "../door/at-hand.ts";
import { holderFor, holderSeen, keyer } from "../door/own-station.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { lengthsSchema, testSchema } from "../door/shapes.ts";
import { router } from "../door/trpc.ts";
import { requireLive } from "../lanes/load.ts";
import { confirm } from "./confirm.ts";
import { gather, move, noteAbsent, sendBack, setVariant } from "./lanes.ts";
import { place } from "./place.ts";
import { callOff, end, start } from "./run.ts";
import {
  clockSchema,
  heatIdSchema,
  laneNumberSchema,
  startSchema,
  tappedSchema,
  tapSchema,
} from "./schemas.ts";
import { tap, undo } from "./taps.ts";
import { tableClock, view } from "./view.ts";

const inLane = z.object({ heatId: heatIdSchema, athleteId: z.int() });
const wanted = z.object({
  test: testSchema,
  /** Made by the client; used when the caller has no current heat of this test. */
  heatId: heatIdSchema,
  /** Number of lanes at the station. */
  lanes: laneNumberSchema,
  by: initialsSchema,
});
const takenSchema = z.object({ lane: z.int(), athleteId: z.int(), variant: z.string() });

/**
 * Live heats: one test run by many lanes at once, each by the device that gathered it or by the table. Every change is
 * safe to send again.
 */
export const heat = router({
  /** The heat of whoever asks; the organiser may name another `holder`: a device, or null for the table. */
  view: keyer(
    z.object({ test: testSchema, lengths: lengthsSchema, holder: z.uuid().nullable().optional() }),
  ).query(({ ctx, input: { holder, ...seen } }) =>
    view(ctx.desk, requireDay(ctx.desk.store.db), { ...seen, holder: holderSeen(ctx, holder) }),
  ),

  /** "Call the next": fills the free lanes of the current heat, or of a new one. */
  gather: keyer(wanted)
    .output(
      z.object({
        heatId: z.string(),
        placed: z.array(takenSchema),
        /** `soon`: it is worth waiting for them before the start. */
        resting: z.object({ bib: z.int(), readyAt: z.string(), soon: z.boolean() }).nullable(),
      }),
    )
    .mutation(({ ctx, input }) =>
      gather(ctx.desk, { ...input, holder: holderFor(ctx.desk.store.db, ctx, input.heatId) }),
    ),

  /** Puts somebody in a lane by hand, by id or by scanned or typed bib. */
  place: keyer(
    wanted.extend({
      who: z.union([z.object({ bib: z.string().max(40) }), z.object({ athleteId: z.int() })]),
      lane: laneNumberSchema.optional(),
      variant: z.string().max(20).optional(),
      evenResting: z.boolean().default(false),
    }),
  )
    .output(takenSchema.extend({ heatId: z.string() }))
    .mutation(({ ctx, input: { who, lane, variant, evenResting, ...heat } }) =>
      place(
        ctx.desk,
        { ...heat, holder: holderFor(ctx.desk.store.db, ctx, heat.heatId) },
        { who, lane, variant, evenResting },
      ),
    ),

  variant: keyer(inLane.extend({ variant: z.string().max(20) })).mutation(
    ({ ctx: { desk }, input: { heatId, athleteId, variant } }) => {
      desk.store.write(["heats"], (db) => setVariant(db, requireLive(db, heatId).heat, athleteId, variant));
    },
  ),

  /** Moves somebody to another lane, or swaps the two. */
  move: keyer(inLane.extend({ to: laneNumberSchema })).mutation(
    ({ ctx: { desk }, input: { heatId, athleteId, to } }) => {
      desk.store.write(["heats"], (db) => move(db, requireLive(db, heatId).heat, athleteId, to));
    },
  ),

  /** Sends an athlete back to the queue, at their old place. */
  sendBack: keyer(inLane).mutation(({ ctx: { desk }, input: { heatId, athleteId } }) => {
    desk.store.write(["heats", "calls"], (db) => sendBack(db, requireLive(db, heatId).heat, athleteId));
  }),

  /** Notes a no-show after a call: back to the end of the queue. `id` is made by the client. */
  absent: keyer(inLane.extend({ id: z.uuid(), by: initialsSchema })).mutation(
    ({ ctx: { desk }, input: { heatId, athleteId, id, by } }) => {
      const noted = { id, by, at: desk.now().toISOString() };
      desk.store.write(["heats", "calls", "entrants"], (db) =>
        noteAbsent(db, requireLive(db, heatId).heat, athleteId, noted),
      );
    },
  ),

  /**
   * The table's clock and the heat's: for a device that will say on the former when it starts the heat, and for a screen that
   * looks at it several times. A view takes much longer to make, and so is less certain.
   */
  clock: keyer(z.object({ heatId: heatIdSchema }))
    .output(clockSchema)
    .query(({ ctx: { desk }, input }) => tableClock(desk, input.heatId)),

  /** Starts the clock at the tap; the count-in comes first. */
  start: keyer(startSchema)
    .output(z.object({ elapsedMs: z.number() }))
    .mutation(({ ctx: { desk }, input: { heatId, ...sent } }) => start(desk, heatId, sent)),

  tap: keyer(
    z.object({ heatId: heatIdSchema, by: initialsSchema, events: z.array(tapSchema).min(1).max(200) }),
  )
    .output(tappedSchema)
    .mutation(({ ctx: { desk }, input }) => tap(desk, input.heatId, input.by, input.events)),

  /** Undoes a tap within ten seconds. `id` is the undo's own, made by the client. */
  undo: keyer(
    z.object({ heatId: heatIdSchema, eventId: z.string().max(100), id: z.uuid(), by: initialsSchema }),
  ).mutation(({ ctx: { desk }, input }) => undo(desk, input.heatId, input.eventId, input.id, input.by)),

  /** Answers the doubt about a live result: it is right. Also after the heat has ended. */
  confirm: keyer(z.object({ attemptId: z.string().max(100), id: z.uuid(), by: initialsSchema })).mutation(
    ({ ctx: { desk }, input }) => confirm(desk, input),
  ),

  end: keyer(
    z.object({ heatId: heatIdSchema, by: initialsSchema, setAside: z.boolean().default(false) }),
  ).mutation(({ ctx: { desk }, input }) => end(desk, input.heatId, input.by, input.setAside)),

  /** Cancels a heat: a false start of everybody, or a fire alarm. `again`: the id of the heat with the same lanes. */
  callOff: keyer(
    z.object({
      heatId: heatIdSchema,
      by: initialsSchema,
      reason: reasonSchema,
      again: heatIdSchema.optional(),
    }),
  ).mutation(({ ctx: { desk }, input: { heatId, by, reason, again } }) =>
    callOff(desk, { heatId, by, reason, again }),
  ),
});
