import { z } from "zod";
import { farFrom } from "../../domain/day/dates.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { addDayEvent, dayEvents, dayOfEvent } from "../../store/tables/day-events.ts";
import {
  allDays,
  type Day,
  dayAtHand,
  dayById,
  discardDay,
  setDayPlan,
  setDayState,
  wasDiscarded,
} from "../../store/tables/days.ts";
import { countStates, entrants, expectEntrant } from "../../store/tables/entrants.ts";
import { requireDay } from "../door/at-hand.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { allow } from "../door/trpc.ts";

/** The date and the name of a planned day. */
export const planShape = { date: z.iso.date(), title: z.string().trim().min(1).max(80) };

/** True if people have confirmed a date that is not near today. */
export const sureSchema = z.boolean().default(false);

/** Refuses a date that is not near today until somebody says that it is meant. @throws Refusal `conflict` */
export function requireNearOrSure(desk: Desk, date: string, sure: boolean): void {
  const today = isoDate(desk.now());
  if (!sure && farFrom(date, today) !== null) {
    throw new Refusal("conflict", sentence("dayPlan.farAway", { date, today }));
  }
}

/** @throws Refusal `not-found` for a day that is not there, `conflict` for one that has been opened. */
function requirePlanned(db: ReadableDb, dayId: number): Day {
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("day.none"));
  if (day.state !== "planned") throw new Refusal("conflict", sentence("dayPlan.opened"));
  return day;
}

/** Changes the name and the date of a planned day. */
export const changePlan = allow("organiser")
  .input(z.object({ dayId: z.int(), ...planShape, sure: sureSchema }))
  .mutation(({ ctx: { desk }, input: { dayId, date, title, sure } }) =>
    desk.store.write(["day"], (db) => {
      const { date: before } = requirePlanned(db, dayId);
      if (date !== before) requireNearOrSure(desk, date, sure);
      setDayPlan(db, dayId, { date, title });
    }),
  );

/** Throws a planned day away; the athletes stay. Doing it twice changes nothing. */
export const discard = allow("organiser")
  .input(z.object({ dayId: z.int() }))
  .mutation(({ ctx: { desk }, input: { dayId } }) =>
    desk.store.write(["day", "entrants"], (db) => {
      if (wasDiscarded(db, dayId)) return;
      requirePlanned(db, dayId);
      const { expected, ...entered } = countStates(entrants(db, dayId));
      if (Object.values(entered).some((count) => count > 0)) {
        throw new Refusal("conflict", sentence("dayPlan.entered"));
      }
      discardDay(db, dayId, desk.now().toISOString());
    }),
  );

/**
 * Puts everybody who was on the list of the newest closed day on that of the day at hand, as expected; whoever is on it
 * stays as they are, so that doing it twice changes nothing. Returns how many were added.
 */
export const listAgain = allow("organiser").mutation(({ ctx: { desk } }) =>
  desk.store.write(["entrants"], (db) => {
    const day = requireDay(db);
    const last = allDays(db).find(({ id, state }) => state === "closed" && id !== day.id);
    if (last === undefined) throw new Refusal("not-found", sentence("dayPlan.noneBefore"));
    const at = desk.now().toISOString();
    const added = entrants(db, last.id).filter(({ athleteId }) => expectEntrant(db, day.id, athleteId, at));
    return { added: added.length };
  }),
);

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
  .query(({ ctx: { desk }, input: { dayId } }) => dayEvents(desk.store.db, dayId));
