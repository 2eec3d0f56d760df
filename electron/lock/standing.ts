import { z } from "zod";
import { standingPostSchema } from "../domain/lock/post.ts";

/** The desk's state for its window. */
export const standingSchema = z.object({
  post: standingPostSchema,
  /** True if nobody may use it until the PIN is given. */
  locked: z.boolean(),
  pinSet: z.boolean(),
  idleMinutes: z.int(),
  /** Ms for which nobody may try a PIN, at the time of this answer. */
  waitMs: z.number(),
  /** True if the stored lock can't be read, so that no PIN opens it. */
  unreadable: z.boolean(),
  /** The folder for the file that drops a forgotten PIN: for the organiser, and where only that file still helps. */
  folder: z.string().nullable(),
});

export type Standing = z.infer<typeof standingSchema>;

/** The outcome of a try with a PIN. A wrong one, and one that was not looked at, wait for ms before the next. */
export const triedSchema = z.discriminatedUnion("outcome", [
  z.object({ outcome: z.literal("right") }),
  z.object({ outcome: z.enum(["wrong", "wait"]), waitMs: z.number() }),
]);

export type Tried = z.infer<typeof triedSchema>;
