import { z } from "zod";
import { isoDate } from "../door/calendar.ts";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { boardSchema } from "./schemas.ts";
import { boardOf, dayOnTheWall } from "./view.ts";

/** The big screen of the hall. */
export const board = router({
  /** All that the board shows; nothing of anybody beyond what they agreed to. */
  view: allow("board", "organiser", "station", "check-in")
    .input(z.object({ lengths: lengthsSchema }).default({ lengths: "cm" }))
    .output(boardSchema)
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const hidden = desk.boardHidden;
      // Of a hidden board nothing is sent at all.
      const day = hidden ? null : dayOnTheWall(db, isoDate(desk.now()));
      return { hidden, demo: desk.kind === "demo", ...boardOf(db, day, input.lengths) };
    }),

  hidden: allow("organiser", "station", "check-in")
    .output(z.object({ hidden: z.boolean() }))
    .query(({ ctx: { desk } }) => ({ hidden: desk.boardHidden })),

  /** Blanks the board at once, or shows it again; whoever is at the desk may, for whatever the reason. */
  hide: allow("organiser", "station", "check-in")
    .input(z.object({ hidden: z.boolean() }))
    .mutation(({ ctx: { desk }, input }) => desk.hideBoard(input.hidden)),
});
