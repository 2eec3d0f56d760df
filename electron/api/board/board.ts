import { router } from "../trpc.ts";

export const board = router({});
