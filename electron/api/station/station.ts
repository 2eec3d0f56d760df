import { router } from "../trpc.ts";

export const station = router({});
