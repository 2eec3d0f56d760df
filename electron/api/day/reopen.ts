import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { triedSchema } from "../../lock/standing.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import { addDayEvent, dayEvents, dayOfEvent } from "../../store/tables/day-events.ts";
import { dayAtHand, dayById, setDayState } from "../../store/tables/days.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { allow } from "../door/trpc.ts";

const reopening = z.object({
  dayId: z.int(),
  /** Made by the client, so that a retry is known. */
  id: z.uuid(),
  /** The typed PIN; checked only where there is one. */
  pin: z.string().max(64).default(""),
  by: initialsSchema,
  reason: reasonSchema,
});

/**
 * Opens a closed day again, for papers that came late: the PIN is asked for again where there is one, and the day's history
 * gets a line. The same id again changes nothing.
 */
export const reopen = allow("organiser")
  .input(reopening)
  .output(triedSchema)
  .mutation(async ({ ctx: { desk }, input }) => {
    const tried = await desk.lock.confirm(input.pin);
    if (tried.outcome === "right") desk.store.write(["day"], (db) => openAgain(db, desk, input));
    return tried;
  });

/** @throws Refusal for a day that is not there or not closed, or while another one is planned or open. */
function openAgain(db: WritableDb, desk: Desk, { dayId, id, by, reason }: z.infer<typeof reopening>): void {
  if (dayOfEvent(db, id) !== undefined) return;
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("day.none"));
  const other = dayAtHand(db);
  if (other?.id === dayId) throw new Refusal("conflict", sentence("dayPlan.notClosed"));
  if (other !== undefined) {
    throw new Refusal("conflict", sentence("dayPlan.otherAtHand", { title: other.title }));
  }
  setDayState(db, dayId, "open");
  const now = desk.now();
  addDayEvent(db, dayId, { id, kind: "reopened", at: now.toISOString(), on: isoDate(now), by, reason });
}

/** Returns the events of a day: each opening and closing, by whom, and why. */
export const history = allow("organiser")
  .input(z.object({ dayId: z.int() }))
  .output(
    z.array(
      z.object({
        id: z.string(),
        kind: z.enum(["opened", "closed", "reopened"]),
        at: z.string(),
        by: z.string(),
        reason: z.string(),
      }),
    ),
  )
  .query(({ ctx: { desk }, input: { dayId } }) => dayEvents(desk.store.db, dayId));
