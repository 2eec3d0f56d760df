import { z } from "zod";

/** What came of a try with the PIN. */
export const triedSchema = z.discriminatedUnion("outcome", [
  z.object({ outcome: z.literal("right") }),
  /** How long the next try has to wait, in ms. */
  z.object({ outcome: z.literal("wrong"), waitMs: z.number() }),
  /** This one was not looked at. */
  z.object({ outcome: z.literal("wait"), waitMs: z.number() }),
]);
