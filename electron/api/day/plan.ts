import { z } from "zod";
import { farFrom } from "../../domain/day/dates.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Day, dayById, discardDay, setDayPlan, wasDiscarded } from "../../store/tables/days.ts";
import { countStates, entrants } from "../../store/tables/entrants.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { allow } from "../door/trpc.ts";

/** The date and the name of a planned day. */
export const planShape = { date: z.iso.date(), title: z.string().trim().min(1).max(80) };

/** True if people have confirmed a date that is not near today. */
export const sureSchema = z.boolean().default(false);

/**
 * Holds a date that is not near today until somebody says that it is meant.
 * @throws Refusal `conflict`
 */
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
