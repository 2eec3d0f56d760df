import { z } from "zod";
import { testCodes } from "../tests/registry.ts";

/** The desk's current user: its organiser, or the volunteer to whom it was handed over. */
export const postSchema = z.discriminatedUnion("role", [
  z.object({ role: z.literal("organiser") }),
  z.object({ role: z.literal("check-in") }),
  z.object({ role: z.literal("station"), test: z.enum(testCodes) }),
]);

export type Post = z.infer<typeof postSchema>;

/** The users to whom a desk can be handed over. */
export const volunteerPostSchema = postSchema.refine(({ role }) => role !== "organiser");

/** Minutes without a touch after which an organiser's desk locks itself. */
export const idleMinutesSchema = z.int().min(1).max(240);
export const usualIdleMinutes = 10;
