import { router } from "../trpc.ts";

export const checkIn = router({});
