import { router } from "../trpc.ts";

export const bundle = router({});
