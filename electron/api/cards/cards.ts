import { z } from "zod";
import { nextWindow } from "../../domain/cards/window.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allDays, type Day, dayAtHand, dayById } from "../../store/tables/days.ts";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { peopleOf, whichCardsSchema } from "./people.ts";
import { cardsOf } from "./shape.ts";

const table = allow("organiser");
const whoInput = z.object({
  /** null: the day at hand once it is open, else the last one that was closed. */
  dayId: z.int().nullable().default(null),
});

/** The cards that athletes take home. */
export const cards = router({
  /** Returns who has a card of a day: everybody with at least one mark. */
  people: table
    .input(whoInput.default({ dayId: null }))
    .query(({ ctx: { desk }, input }) => peopleOf(desk.store.db, cardDay(desk.store.db, input.dayId))),

  /** Returns the cards of one athlete, a league or everybody; an athlete without a mark has none. */
  list: table
    .input(whoInput.extend({ which: whichCardsSchema, lengths: lengthsSchema }))
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const day = cardDay(db, input.dayId);
      if (day === null) throw new Refusal("unavailable", sentence("day.none"));
      return {
        day: { id: day.id, date: day.date, title: day.title, state: day.state },
        next: nextWindow(day.date),
        cards: cardsOf(db, day, input.which, input.lengths),
      };
    }),
});

/** Returns the default day for cards: the one being held, else the last closed one. */
function usualDay(db: ReadableDb): Day | null {
  const atHand = dayAtHand(db);
  if (atHand?.state === "open") return atHand;
  return allDays(db).find(({ state }) => state === "closed") ?? atHand ?? null;
}

/**
 * Returns the day with this id, or the default one for null; null when there is no day at all.
 * @throws Refusal `not-found` when no day has this id.
 */
function cardDay(db: ReadableDb, dayId: number | null): Day | null {
  if (dayId === null) return usualDay(db);
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("cards.noSuchDay"));
  return day;
}
