import { z } from "zod";
import { lengthsSchema } from "../door/shapes.ts";
import { allow, router } from "../door/trpc.ts";
import { noiseSchema } from "./schemas.ts";
import { viewNoise } from "./view.ts";

/** How much is noise: what each test swings by when nothing has changed. */
export const noise = router({
  /** Per test the typical error that is used, where it is from, and what it means at a typical mark. */
  get: allow("organiser", "check-in", "station")
    .input(z.object({ lengths: lengthsSchema }).default({ lengths: "cm" }))
    .output(noiseSchema)
    .query(({ ctx: { desk }, input }) => viewNoise(desk.store.db, input.lengths)),
});
