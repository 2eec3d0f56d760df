import { z } from "zod";
import type { JoinedDevice } from "../../domain/devices/place.ts";
import { idleMinutesSchema, usualIdleMinutes, volunteerPostSchema } from "../../domain/lock/post.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { standingSchema, triedSchema } from "../../lock/standing.ts";
import type { Desk } from "../door/desk.ts";
import { allow, router } from "../door/trpc.ts";
import { heatsAtTable, runsAtTable } from "../heat/running.ts";

/** Longer than any PIN; the typed text is tried as it is. */
const typed = z.string().max(64);

/** The desk's lock: its current user, and what a change takes. It says nothing about anybody, only the computer. */
export const lock = router({
  standing: allow("organiser", "check-in", "station", "second-judge", "locked")
    .output(standingSchema)
    .query(({ ctx: { desk, device } }) =>
      device === undefined || device === null ? desk.lock.standing() : standingOf(device),
    ),

  /** Returns the desk to the organiser. If it is the organiser's already, no PIN is checked. */
  unlock: allow("organiser", "check-in", "station", "locked")
    .input(z.object({ pin: typed }))
    .output(triedSchema)
    .mutation(({ ctx: { desk }, input }) => desk.lock.unlock(input.pin)),

  /** `current`: the old PIN, if there is one. */
  setPin: allow("organiser")
    .input(z.object({ pin: typed, current: typed.nullable().default(null) }))
    .mutation(({ ctx: { desk }, input }) => {
      if (desk.kind === "demo") throw new Refusal("conflict", sentence("lock.inDemo"));
      return desk.lock.setPin(input.pin, input.current);
    }),

  removePin: allow("organiser")
    .input(z.object({ current: typed }))
    .mutation(({ ctx: { desk }, input }) => desk.lock.removePin(input.current)),

  setIdle: allow("organiser")
    .input(z.object({ minutes: idleMinutesSchema }))
    .mutation(({ ctx: { desk }, input }) => desk.lock.setIdleMinutes(input.minutes)),

  /** Hands the desk over to a volunteer until the PIN is given. */
  handOver: allow("organiser")
    .input(z.object({ to: volunteerPostSchema }))
    .mutation(({ ctx: { desk }, input: { to } }) => {
      if (to.role === "organiser") return;
      requireNoHeatLeftAlone(desk, to.role === "station" ? to.test : null);
      desk.lock.handOver(to);
    }),

  lockNow: allow("organiser", "locked").mutation(({ ctx: { desk } }) => {
    if (!desk.lock.standing().pinSet) throw new Refusal("conflict", sentence("lock.noPin"));
    if (runsAtTable(desk)) throw new Refusal("conflict", sentence("lock.heatRuns"));
    desk.lock.lock("hand");
  }),

  /** Returns the events of the lock, newest first. */
  log: allow("organiser").query(({ ctx: { desk } }) => desk.lock.notes()),
});

/** The standing of a device on the network: what its place says. The table's lock is the table's alone. */
function standingOf({ place }: JoinedDevice): z.infer<typeof standingSchema> {
  if (place.role === "board") throw new Refusal("forbidden", sentence("door.forbidden"));
  const open = { locked: false, pinSet: false, waitMs: 0, unreadable: false, folder: null };
  return { post: place, ...open, idleMinutes: usualIdleMinutes };
}

/** Refuses while a heat runs that nobody at the desk could tap any more, which would spoil its results. */
function requireNoHeatLeftAlone(desk: Desk, staying: string | null): void {
  const left = heatsAtTable(desk).filter((test) => test !== staying);
  if (left.length > 0) throw new Refusal("conflict", sentence("lock.heatElsewhere"));
}
