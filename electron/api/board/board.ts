import { z } from "zod";
import { isoDate } from "../calendar.ts";
import { lengthsSchema } from "../station/schemas.ts";
import { allow, router } from "../trpc.ts";
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
      const day = dayOnTheWall(db, isoDate(desk.now()));
      return { demo: desk.kind === "demo", ...boardOf(db, day, input.lengths) };
    }),
});
