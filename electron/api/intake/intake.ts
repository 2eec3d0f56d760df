import { router } from "../trpc.ts";

export const intake = router({});
