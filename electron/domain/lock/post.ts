import { z } from "zod";
import { testCodes } from "../tests/registry.ts";

/** The desk's current user: its organiser, or the volunteer to whom it was handed over. */
export const postSchema = z.discriminatedUnion("role", [
  z.object({ role: z.literal("organiser") }),
  z.object({ role: z.literal("check-in") }),
  z.object({ role: z.literal("station"), test: z.enum(testCodes) }),
]);

/** What a window is for: a post of the desk, or on a device of the network to judge a second time. */
export const standingPostSchema = z.discriminatedUnion("role", [
  ...postSchema.options,
  z.object({ role: z.literal("second-judge"), test: z.enum(testCodes) }),
]);

export type Post = z.infer<typeof postSchema>;
export type StandingPost = z.infer<typeof standingPostSchema>;

/** The users to whom a desk can be handed over. */
export const volunteerPostSchema = postSchema.refine(({ role }) => role !== "organiser");

/** Minutes without a touch after which an organiser's desk locks itself. */
export const idleMinutesSchema = z.int().min(1).max(240);
export const usualIdleMinutes = 10;
