import { z } from "zod";
import { isoDate } from "../door/calendar.ts";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { boardSchema } from "./schemas.ts";
import { boardOf, dayOnTheWall } from "./view.ts";

/** The big screen of the hall. */
export const board = router({
  /** Returns all that the screen shows; nothing about anybody beyond their consent. */
  view: allow("board", "organiser", "station", "check-in")
    .input(z.object({ lengths: lengthsSchema }).default({ lengths: "cm" }))
    .output(boardSchema)
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const hidden = desk.boardHidden;
      // A hidden screen gets no data at all.
      const day = hidden ? null : dayOnTheWall(db, isoDate(desk.now()));
      return { hidden, demo: desk.kind === "demo", ...boardOf(db, day, input.lengths) };
    }),

  hidden: allow("organiser", "station", "check-in")
    .output(z.object({ hidden: z.boolean() }))
    .query(({ ctx: { desk } }) => ({ hidden: desk.boardHidden })),

  /** Blanks the screen at once, or shows it again; anybody at the desk may, for any reason. */
  hide: allow("organiser", "station", "check-in")
    .input(z.object({ hidden: z.boolean() }))
    .mutation(({ ctx: { desk }, input }) => desk.hideBoard(input.hidden)),
});
