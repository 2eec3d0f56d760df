import { z } from "zod";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { noiseSchema } from "./schemas.ts";
import { viewNoise } from "./view.ts";

/** The noise of each test: its variation when nothing has changed. */
export const noise = router({
  /** Returns each test's typical error in use, its source, and its meaning at a typical mark. */
  get: allow("organiser", "check-in", "station")
    .input(z.object({ lengths: lengthsSchema }).default({ lengths: "cm" }))
    .output(noiseSchema)
    .query(({ ctx: { desk }, input }) => viewNoise(desk.store.db, input.lengths)),
});
