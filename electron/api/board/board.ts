import { z } from "zod";
import { listPageOf } from "../../domain/list-page.ts";
import { isoDate } from "../door/calendar.ts";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import type { Board } from "./schemas.ts";
import { dayOnTheWall, toldOnBoard } from "./view.ts";

/** How many rows of a test a screen has room for, and how often it has shown them before: it goes on where it stopped. */
const wallSchema = z.object({ rows: z.int().min(1).max(100), round: z.int().min(0) });

/** At the end of a large day all rows are a quarter of a megabyte, and a screen shows eight of each. */
function partsOf(walls: Board["walls"], { rows, round }: z.infer<typeof wallSchema>): Board["walls"] {
  return walls.map((wall) => ({ test: wall.test, ...listPageOf(wall.rows, rows, round) }));
}

/** The big screen of the hall. */
export const board = router({
  /** Returns all that the screen shows; nothing about anybody beyond their consent. */
  view: allow("board", "organiser", "station", "check-in")
    .input(z.object({ lengths: lengthsSchema, wall: wallSchema.optional() }).default({ lengths: "cm" }))
    .query(({ ctx: { desk }, input }): Board => {
      const { db } = desk.store;
      const hidden = desk.boardHidden;
      // A hidden screen gets no data at all.
      const day = hidden ? null : dayOnTheWall(db, isoDate(desk.now()));
      const told = toldOnBoard(db, day, input.lengths);
      const walls = input.wall === undefined ? told.walls : partsOf(told.walls, input.wall);
      return { hidden, demo: desk.kind === "demo", ...told, walls };
    }),

  hidden: allow("organiser", "station", "second-judge", "check-in")
    .output(z.object({ hidden: z.boolean() }))
    .query(({ ctx: { desk } }) => ({ hidden: desk.boardHidden })),

  /** Blanks the screen at once, or shows it again; anybody at the desk may, for any reason. */
  hide: allow("organiser", "station", "second-judge", "check-in")
    .input(z.object({ hidden: z.boolean() }))
    .mutation(({ ctx: { desk }, input }) => desk.hideBoard(input.hidden)),
});
